import type { Lineup } from "../lineup/lineup";
import { keyIds, type Row, rowKey } from "../records/kind";
import { cellAddress } from "../sheets/address";
import type { InstrumentRow } from "../sheets/instrumentSheet";
import type { RecordTable } from "../sheets/recordTable";
import type { Finding } from "./finding";

/** A record table with every row computed again from its entries. */
export interface JudgedTable extends RecordTable {
  readonly judged: readonly Row[];
}

/** What every rule works from. */
export interface Context {
  readonly lineup: Lineup;
  readonly tables: readonly JudgedTable[];
  /** Undefined where the workbook has no table of instruments. */
  readonly instruments: ReadonlyMap<string, InstrumentRow> | undefined;
  /** The day of the check, as a serial day number. */
  readonly today: number;
}

/** One check rule: pure, and quiet where it has nothing to say. */
export interface Rule {
  readonly id: string;
  readonly find: (context: Context) => Finding[];
}

/** Where a finding stands: the record, its panel, and the cell of a column. */
export function where(table: JudgedTable, row: number, column: string) {
  const at = table.at.get(column) ?? 0;
  return {
    record: table.kind.id,
    panel: String(table.rows[row]?.object ?? ""),
    sheet: table.table.sheet,
    address: cellAddress(table.table, row, at),
  };
}

/** A row in words: `Bus A · Busbar · L1-E · before`. */
export const rowName = (table: JudgedTable, row: number): string =>
  rowKey(table.rows[row] ?? {}, keyIds(table.kind));

/** Header of a column. */
export const headerOf = (table: JudgedTable, id: string): string =>
  table.kind.columns.find((column) => column.id === id)?.header ?? id;

/** Whether anybody has begun to fill the row: any entry that is not blank. */
export const started = (table: JudgedTable, row: Row): boolean =>
  table.kind.columns.some(
    ({ role, id }) =>
      role === "entry" && row[id] !== null && row[id] !== undefined && row[id] !== "",
  );

/** Runs a finder over every row of every table, or of one kind's. */
export const overRows = (
  context: Context,
  find: (
    table: JudgedTable,
    row: number,
    stored: Row,
    judged: Row,
  ) => Finding | Finding[] | undefined,
  kind?: string,
): Finding[] =>
  context.tables
    .filter((table) => kind === undefined || table.kind.id === kind)
    .flatMap((table) => {
      const findings: Finding[] = [];
      table.rows.forEach((stored, row) => {
        const found = find(table, row, stored, table.judged[row] ?? stored);
        if (Array.isArray(found)) findings.push(...found);
        else if (found) findings.push(found);
      });
      return findings;
    });

/** A number as it is said in a message, also one with a bound: at most six significant digits. */
export const said = (value: unknown): string =>
  typeof value === "number"
    ? String(Number(value.toPrecision(6)))
    : String(value ?? "").replace(
        /^([<>] )([\d.e+-]+)$/,
        (_text, bound, number) => bound + said(Number(number)),
      );
