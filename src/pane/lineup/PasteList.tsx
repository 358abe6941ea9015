import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import { readPanelList } from "../../intake/readPanelList";
import { useText } from "../../report/text";
import { PasteBox } from "../PasteBox";

/** Panels pasted from a list or drawing schedule. */
export function PasteList({
  add,
}: {
  add: (panels: readonly Record<string, unknown>[]) => void;
}): ReactElement {
  const text = useText().lineup;
  const [pasted, setPasted] = useState("");
  const { panels, problems } = useMemo(() => readPanelList(pasted), [pasted]);
  return (
    <Stack
      component="section"
      aria-label={text.paste}
      spacing={1}
      sx={{ border: 1, borderColor: "divider", p: 1 }}
    >
      <PasteBox label={text.pasteLabel} value={pasted} onPaste={setPasted} />
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
