import Button from "@mui/material/Button";
import Stack from "@mui/material/Stack";
import type { ReactElement } from "react";
import type { Report } from "../../check/check";
import type { JudgedTable } from "../../check/context";
import { firstToFill } from "../../check/progress/firstToFill";
import type { SaidConstants } from "../../intake/constants";
import type { PlacedCell } from "../../intake/place/placement";
import { useText } from "../../report/text";
import type { RecordTable } from "../../sheets/recordTable";
import type { Rows } from "../host";
import type { OpenedWorkbook } from "../openedWorkbook";
import type { RowChoice } from "../rowChoice";
import type { StepProps } from "../shared";
import { Cautions } from "./Cautions";
import { Evidence } from "./Evidence";
import { fillKeeping } from "./fillKeeping";
import { Intake } from "./Intake";
import { RowForm } from "./RowForm";
import { nextToType } from "./typedCells";

/** What readings that are pasted beside a record are taken to be of. */
function grantedBy({ kind, rows }: JudgedTable, row: number): SaidConstants {
  const { stage } = rows[row] ?? {};
  return { test: kind.id, ...(typeof stage === "string" ? { stage } : {}) };
}

/** One row: what stands before its test, its blank entries to be typed, how it is judged, and the way to the next. */
export function OneRow({
  report,
  table,
  row,
  choice,
  setChoice,
  edited,
  setEdited,
  reread,
  host,
  work,
  go,
  ...shared
}: StepProps & {
  report: Report;
  table: JudgedTable;
  row: number;
  choice: RowChoice;
  setChoice: (choice: RowChoice) => void;
  edited: RowChoice | undefined;
  setEdited: (row: RowChoice) => void;
  reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>;
}): ReactElement {
  const text = useText().readings;
  const { lineup } = report.context;
  const kind = table.kind.id;
  const show = (next: number | undefined) =>
    setChoice({ kind, object: choice.object, ...(next === undefined ? {} : { row: next }) });
  const write = (cells: readonly PlacedCell<RecordTable>[]) =>
    work.run(async (watch) => {
      const { heldBack } = await fillKeeping(host, cells, watch);
      const next = await reread([{ table: table.table, rows: [row] }]);
      setEdited({ kind, object: choice.object, row });
      if (heldBack.length > 0) {
        work.setTold(text.written(cells.length - heldBack.length, heldBack.length));
        return;
      }
      const after = next?.report?.context.tables.find((one) => one.kind.id === kind);
      if (after) show(nextToType(after, row, lineup));
    });
  const from = edited?.kind === kind ? edited.row : undefined;
  const [before, after] = [nextToType(table, row, lineup, -1), nextToType(table, row, lineup)];
  return (
    <>
      <Stack direction="row" sx={{ flexWrap: "wrap", gap: 1 }}>
        <Button variant="outlined" size="small" onClick={() => show(undefined)}>
          {text.back}
        </Button>
        <Button
          variant="outlined"
          size="small"
          disabled={before === undefined}
          onClick={() => show(before)}
        >
          {text.rowBefore}
        </Button>
        <Button
          variant="outlined"
          size="small"
          disabled={after === undefined}
          onClick={() => show(after)}
        >
          {text.rowAfter}
        </Button>
      </Stack>
      <Cautions kind={table.kind} />
      <RowForm
        key={`${kind} ${row}`}
        table={table}
        row={row}
        lineup={lineup}
        from={from}
        focus={from !== undefined && from !== row}
        busy={work.busy}
        write={write}
      />
      <Button
        variant="outlined"
        onClick={() => go(table.table.sheet, firstToFill(table, row, lineup))}
      >
        {text.goTo}
      </Button>
      <Evidence table={table} row={row} lineup={lineup} toRow={show} />
      <Intake {...shared} host={host} work={work} go={go} granted={grantedBy(table, row)} />
    </>
  );
}
