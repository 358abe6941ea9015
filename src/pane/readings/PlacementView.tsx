import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import type { ReactElement } from "react";
import type { PlacedCell, Placement, Suggestion } from "../../intake/place/placement";
import type { IntakeAnswers } from "../../intake/takeIn";
import { toldIn } from "../../messages/told";
import { type CellValue, keyIds, rowKey } from "../../records/kind";
import { useText } from "../../report/text";
import type { RecordTable } from "../../sheets/recordTable";
import { shownCell, useLocale } from "../locale";

type Cell = PlacedCell<RecordTable>;
/** So many cells of each sort are shown, the others counted. */
const SHOWN = 40;

/** What would be written, what is held back or not placed and why, and what has to be confirmed first. */
export function PlacementView({
  placement: { placed, same, conflicts, unplaced, suggested, kept },
  answers,
  answer,
  busy,
  write,
}: {
  placement: Placement<RecordTable>;
  answers: IntakeAnswers;
  answer: (next: IntakeAnswers) => void;
  busy: boolean;
  write: () => void;
}): ReactElement {
  const messages = useText();
  const text = messages.readings;
  const locale = useLocale();
  const rows = new Set(placed.map((cell) => `${cell.table.table.name}:${cell.row}`)).size;
  const cell = (one: Cell, value: CellValue) =>
    shownCell(locale, value, { date: columnOf(one)?.accepts?.type === "date" });
  const name = (one: Cell) => rowKey(one.table.rows[one.row] ?? {}, keyIds(one.table.kind));
  const change = (one: Cell) =>
    text.change(
      name(one),
      columnOf(one)?.header ?? one.column,
      cell(one, one.old),
      cell(one, one.value),
    );
  const entries = placed.filter(({ column }) => column !== "origin");
  const parts = [
    { title: text.toWrite(entries.length), lines: entries.map(change) },
    { title: text.already(same.length), lines: [] },
    {
      title: text.conflicts(conflicts.length),
      lines: conflicts.map((one) =>
        [change(one), text.stands[one.stands]].filter(Boolean).join(", "),
      ),
    },
    {
      title: text.unplaced(unplaced.length),
      lines: unplaced.map(({ source, reason }) =>
        text.line(source.line, reason(toldIn(messages.language))),
      ),
    },
  ];
  const confirm = ({ field, written }: Suggestion, meant: string) =>
    answer({
      ...answers,
      means: { ...answers.means, [field]: { ...answers.means?.[field], [written]: meant } },
    });
  return (
    <Stack spacing={1}>
      {suggested.map((one) => (
        <Box key={`${one.field} ${one.written}`}>
          <Typography variant="body2">{text.suggestion(one.written)}</Typography>
          {one.candidates.map((candidate) => (
            <Button
              key={candidate.name}
              size="small"
              variant="outlined"
              onClick={() => confirm(one, candidate.name)}
            >
              {text.means(one.written, candidate.name)}
            </Button>
          ))}
        </Box>
      ))}
      {parts.map(({ title, lines }, at) =>
        lines.length > 0 || at === 1 ? (
          <Box component="details" key={title} open={at > 1}>
            <summary>{title}</summary>
            <Box component="ul" sx={{ paddingInlineStart: 2.5, my: 0.5 }}>
              {lines.slice(0, SHOWN).map((line) => (
                <li key={line}>
                  <Typography variant="body2" sx={{ overflowWrap: "anywhere" }}>
                    {line}
                  </Typography>
                </li>
              ))}
              {lines.length > SHOWN && <li>{messages.state.more(lines.length - SHOWN)}</li>}
            </Box>
          </Box>
        ) : undefined,
      )}
      {(conflicts.length > 0 || answers.replace) && (
        <>
          <label style={{ display: "flex", gap: 8, alignItems: "center", minHeight: 44 }}>
            <input
              type="checkbox"
              checked={answers.replace}
              style={{ width: 22, height: 22, flexShrink: 0 }}
              onChange={({ target }) => answer({ ...answers, replace: target.checked })}
            />
            {text.replace}
          </label>
          <Typography variant="body2" color="text.secondary">
            {text.replaceHelp}
          </Typography>
        </>
      )}
      {kept.length > 0 && <Typography variant="body2">{text.kept(kept.length)}</Typography>}
      <Button variant="contained" disabled={busy || placed.length === 0} onClick={write}>
        {text.place(placed.length, rows)}
      </Button>
    </Stack>
  );
}

const columnOf = ({ table, column }: Cell) => table.kind.columns.find(({ id }) => id === column);
