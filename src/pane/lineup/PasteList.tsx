import Button from "@mui/material/Button";
import InputBase from "@mui/material/InputBase";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useId, useMemo, useState } from "react";
import { readPanelList } from "../../intake/readPanelList";
import { useText } from "../../report/text";

/** Panels pasted from a list or drawing schedule. */
export function PasteList({
  add,
}: {
  add: (panels: readonly Record<string, unknown>[]) => void;
}): ReactElement {
  const text = useText().lineup;
  const id = useId();
  const [pasted, setPasted] = useState("");
  const { panels, problems } = useMemo(() => readPanelList(pasted), [pasted]);
  return (
    <Stack
      component="section"
      aria-label={text.paste}
      spacing={1}
      sx={{ border: 1, borderColor: "divider", p: 1 }}
    >
      <label htmlFor={id}>{text.pasteLabel}</label>
      <InputBase
        id={id}
        multiline
        minRows={4}
        maxRows={12}
        value={pasted}
        onChange={({ target }) => setPasted(target.value)}
        sx={{ border: 1, borderColor: "text.secondary", px: 1 }}
      />
      <Typography variant="body2" color="text.secondary">
        {text.pasteHelp}
      </Typography>
      {pasted.trim() !== "" &&
        problems.map(({ line, message }) => (
          <Typography key={line} variant="body2" color="error">
            {text.pasteProblem(line, message)}
          </Typography>
        ))}
      <Button
        variant="contained"
        disabled={panels.length === 0}
        onClick={() =>
          add(
            panels.map((panel) => ({
              ...panel,
              ...(panel.breaker ? { breaker: { designation: "Q0", ...panel.breaker } } : {}),
            })),
          )
        }
      >
        {text.pasteAdd(panels.length)}
      </Button>
    </Stack>
  );
}
