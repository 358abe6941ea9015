import Box from "@mui/material/Box";
import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import Typography from "@mui/material/Typography";
import { type ReactElement, useState } from "react";
import { placeReadings } from "../../intake/place";
import type { PlacedCell, Placement } from "../../intake/placement";
import { type ExportTable, readExport } from "../../intake/readExport";
import { type CellValue, keyIds, rowKey } from "../../records/kind";
import type { RecordTable } from "../../sheets/recordTable";
import { FileButton } from "../FileButton";
import { shownCell, useLocale } from "../locale";
import { messages } from "../messages";
import type { StepProps } from "../shared";

const text = messages.readings;
type Cell = PlacedCell<RecordTable>;

/** The way in for exports: reads one, shows what would come where, and writes it when told to. */
export function Intake({ host, book, work, read }: StepProps): ReactElement | undefined {
  const [taken, setTaken] = useState<{ table: ExportTable; placement: Placement<RecordTable> }>();
  const report = book?.report;
  if (!report) return undefined;

  const open = (file: File) =>
    work.run(async () => {
      setTaken(undefined);
      const found = readExport(await file.text(), { name: file.name });
      if (!found.ok) {
        work.setProblem(found.reason);
        return;
      }
      const { context } = report;
      setTaken({
        table: found.value,
        placement: placeReadings<RecordTable>(found.value, context.tables, {
          replace: false,
          instruments: [...(context.instruments?.values() ?? [])],
          wave: context.lineup.withstand.wave,
        }),
      });
    });
  const place = (cells: readonly Cell[]) =>
    work.run(async (watch) => {
      const { written, heldBack } = await host.fill(cells, watch);
      setTaken(undefined);
      await read(watch);
      work.setTold(text.written(written, heldBack));
    });

  return (
    <Stack spacing={1}>
      <FileButton
        id="export-file"
        label={text.bring}
        accept=".csv,.txt,.tsv"
        disabled={work.busy}
        onFile={open}
      />
      <Typography variant="body2" color="text.secondary">
        {text.bringHelp}
      </Typography>
      {taken && (
        <Preview
          {...taken}
          busy={work.busy}
          place={() => place(taken.placement.placed)}
          leave={() => setTaken(undefined)}
        />
      )}
    </Stack>
  );
}

function Preview({
  table,
  placement: { placed, same, conflicts, unplaced },
  busy,
  place,
  leave,
}: {
  table: ExportTable;
  placement: Placement<RecordTable>;
  busy: boolean;
  place: () => void;
  leave: () => void;
}): ReactElement {
  const locale = useLocale();
  const rows = new Set(placed.map((cell) => `${cell.table.table.name}:${cell.row}`)).size;
  const unknown = table.columns.filter(({ field }) => field === undefined);
  const cell = (one: Cell, value: CellValue) =>
    shownCell(locale, value, {
      date: columnOf(one)?.accepts?.type === "date",
    });
  const lines = [
    ...(same.length > 0 ? [text.already(same.length)] : []),
    ...(unknown.length > 0
      ? [text.unknown(unknown.map(({ title }) => `"${title}"`).join(", "))]
      : []),
    ...(conflicts.length > 0 ? [text.conflicts(conflicts.length)] : []),
    ...conflicts.map((one) =>
      text.conflict(
        rowKey(one.table.rows[one.row] ?? {}, keyIds(one.table.kind)),
        columnOf(one)?.header ?? one.column,
        cell(one, one.old),
        cell(one, one.value),
      ),
    ),
    ...(unplaced.length > 0 ? [text.unplaced(unplaced.length)] : []),
    ...unplaced.map(({ source, reason }) => text.line(source.line, reason)),
  ];
  return (
    <Box
      component="section"
      aria-label={table.name}
      sx={{ border: 1, borderColor: "divider", p: 1 }}
    >
      <Typography variant="h3">{text.taken(table.name, table.rows.length)}</Typography>
      <Typography variant="body2">{table.decimal.evidence}</Typography>
      <Box component="ul" sx={{ paddingInlineStart: 2.5, my: 1 }}>
        {lines.map((line) => (
          <li key={line}>
            <Typography variant="body2" sx={{ overflowWrap: "anywhere" }}>
              {line}
            </Typography>
          </li>
        ))}
      </Box>
      <Stack spacing={1}>
        <Button variant="contained" disabled={busy || placed.length === 0} onClick={place}>
          {text.place(placed.length, rows)}
        </Button>
        <Button onClick={leave}>{text.cancel}</Button>
      </Stack>
    </Box>
  );
}

const columnOf = ({ table, column }: Cell) => table.kind.columns.find(({ id }) => id === column);
