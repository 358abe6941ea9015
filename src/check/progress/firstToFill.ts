import { type Column, isBlank, isNeeded, type RecordKind, verdictOf } from "../../records/kind";
import { cellAddress } from "../../sheets/cells/address";
import type { Context, JudgedTable } from "../context";
import { nextSteps } from "./next";

/** A row to work on, and its cell to begin with. */
export interface ToFill {
  readonly kind: RecordKind;
  readonly row: number;
  readonly sheet: string;
  readonly address: string;
}

/**
 * The cell to begin with in a row: its first reading that is blank and needed, else the first other blank
 * entry that is needed, else its first reading.
 */
export function firstToFill(
  { kind, table, at, judged }: JudgedTable,
  row: number,
  lineup: Context["lineup"],
): string {
  const cells = judged[row] ?? {};
  const entries = kind.columns.filter(({ id, role }) => role === "entry" && at.has(id));
  const open = entries.filter(
    (column) => column.need && isBlank(cells[column.id]) && isNeeded(column, cells, lineup),
  );
  const isReading = ({ need }: Column) => need === "reading";
  const first = open.find(isReading) ?? open[0] ?? entries.find(isReading) ?? entries[0];
  return cellAddress(table, row, first ? (at.get(first.id) ?? 0) : 0);
}

/** The row and cell that the work goes on with, by the order of the work; undefined where none is missing. */
export function nextToFill(context: Context): ToFill | undefined {
  const [step] = nextSteps(context);
  const table = context.tables.find(({ kind }) => kind.id === step?.kind.id);
  if (!step || !table) return undefined;
  const row = table.judged.findIndex(
    (cells, index) =>
      !table.aside.has(index) &&
      verdictOf(cells) === "Missing" &&
      String(cells.object) === step.object &&
      String(cells.stage ?? "") === step.stage,
  );
  if (row < 0) return undefined;
  return {
    kind: table.kind,
    row,
    sheet: table.table.sheet,
    address: firstToFill(table, row, context.lineup),
  };
}
