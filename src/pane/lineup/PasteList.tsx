import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useMemo, useState } from "react";
import {
  type ListAnswers,
  PANEL_COLUMNS,
  type PanelColumn,
  readPanelList,
} from "../../intake/readPanelList";
import { BREAKER_MEDIA } from "../../lineup/equipment";
import { toldIn } from "../../messages/told";
import { useText } from "../../report/text";
import { Choice } from "../Choice";
import { PasteBox } from "../PasteBox";

/** Panels typed or pasted as a table; columns that it does not explain itself are asked for. */
export function PasteList({
  initial,
  breaker,
  add,
}: {
  /** What is pasted already. */
  initial: string;
  /** What a breaker is called that is not named. */
  breaker: string;
  add: (panels: readonly Record<string, unknown>[]) => void;
}): ReactElement {
  const { lineup: text, language } = useText();
  const told = toldIn(language);
  const [pasted, setPasted] = useState(initial);
  const [answers, setAnswers] = useState<ListAnswers>({});
  const { panels, problems, unknown, asksMedium } = useMemo(
    () => readPanelList(pasted, answers),
    [pasted, answers],
  );
  const media = BREAKER_MEDIA.map((one) => ({ value: one, label: one }));
  const columns = [
    { value: "spare", label: text.columnLeftOut },
    ...PANEL_COLUMNS.map((one) => ({ value: one, label: text.columns[one] })),
  ];
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
      {unknown.map(({ title, sample }) => (
        <Choice
          key={title}
          label={text.columnAsked(title, sample)}
          value={answers.columns?.[title] ?? "spare"}
          choices={columns}
          onChoose={(value) =>
            setAnswers({
              ...answers,
              columns: { ...answers.columns, [title]: value as PanelColumn | "spare" },
            })
          }
        />
      ))}
      {asksMedium && (
        <Choice
          label={text.mediumAsked}
          value={answers.medium ?? ""}
          choices={[{ value: "", label: text.notSet }, ...media]}
          onChoose={(value) => {
            const { medium: _, ...others } = answers;
            const medium = BREAKER_MEDIA.find((one) => one === value);
            setAnswers(medium ? { ...others, medium } : others);
          }}
        />
      )}
      {pasted.trim() !== "" &&
        problems.map(({ line, message }) => (
          <Typography key={line} variant="body2" color="error">
            {text.pasteProblem(line, message(told))}
          </Typography>
        ))}
      <Button
        variant="contained"
        disabled={panels.length === 0}
        onClick={() =>
          add(
            panels.map((panel) => ({
              ...panel,
              ...(panel.breaker ? { breaker: { designation: breaker, ...panel.breaker } } : {}),
            })),
          )
        }
      >
        {text.pasteAdd(panels.length)}
      </Button>
    </Stack>
  );
}
