import type { Lineup } from "../lineup/lineup";
import { daySerial } from "../quantities/dates";
import { type Column, isBlank, type Row } from "../records/kind";
import { cellAddress } from "../sheets/address";
import type { InstrumentRow } from "../sheets/instrumentSheet";
import type { RecordTable } from "../sheets/recordTable";
import type { Snapshot } from "../sheets/snapshot";
import type { Finding } from "./finding";

/** A record table with every row computed again from its entries. */
export interface JudgedTable extends RecordTable {
  readonly judged: readonly Row[];
  /** What names each row: its key cells in order. */
  readonly keys: readonly string[];
  /** What the lineup gives for each row that it needs, by key. */
  readonly given: ReadonlyMap<string, Row>;
  /** False where formulas stand without their values, as a program that cannot calculate leaves them. */
  readonly calculated: boolean;
}

/** What every rule works from. */
export interface Context {
  /** The workbook as it was read. */
  readonly snapshot: Snapshot;
  /** The lineup that the records are judged by. */
  readonly lineup: Lineup;
  /** The lineup as the cover, panels and criteria sheets tell it; undefined where they do not tell it in full. */
  readonly told: Lineup | undefined;
  readonly tables: readonly JudgedTable[];
  /** Undefined where the workbook has no table of instruments. */
  readonly instruments: ReadonlyMap<string, InstrumentRow> | undefined;
  /** The day of the check, as a serial day number. */
  readonly today: number;
  /** What was not understood of blocks in somebody's own layout. */
  readonly unmapped?: readonly Finding[];
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
export const rowName = (table: JudgedTable, row: number): string => table.keys[row] ?? "";

/** Header of a column. */
export const headerOf = (table: JudgedTable, id: string): string =>
  table.kind.columns.find((column) => column.id === id)?.header ?? id;

/** Looks at one row of a table; says what it finds. */
export type RowRule = (row: number, stored: Row, judged: Row) => Finding | undefined | Finding[];

/**
 * Runs a rule over every row of every table, or of one kind's tables.
 *
 * @param prepare made once for a table, so that nothing is worked out anew for each of its rows
 */
export const overRows = (
  context: Context,
  prepare: (table: JudgedTable) => RowRule,
  kind?: string,
): Finding[] => {
  const findings: Finding[] = [];
  for (const table of context.tables) {
    if (kind !== undefined && table.kind.id !== kind) continue;
    const rule = prepare(table);
    for (let row = 0; row < table.rows.length; row++) {
      const stored = table.rows[row] as Row;
      const found = rule(row, stored, table.judged[row] as Row);
      if (Array.isArray(found)) findings.push(...found);
      else if (found) findings.push(found);
    }
  }
  return findings;
};

/** Looks at some columns of a row; says what it finds, and makes nothing where that is nothing. */
export function overColumns(
  columns: readonly Column[],
  find: (column: Column) => Finding | undefined,
): Finding[] | undefined {
  let findings: Finding[] | undefined;
  for (const column of columns) {
    const found = find(column);
    if (found) {
      findings ??= [];
      findings.push(found);
    }
  }
  return findings;
}

/** Columns whose blank cell means something, that this row does not do without. */
export const blanks = (
  columns: readonly Column[],
  stored: Row,
  lineup: Lineup,
): readonly Column[] | undefined => {
  let found: Column[] | undefined;
  for (const column of columns)
    if (isBlank(stored[column.id]) && (column.needed?.(stored, lineup) ?? true)) {
      found ??= [];
      found.push(column);
    }
  return found;
};

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The day in a cell as a serial number: a date, or text as 2026-11-25; undefined for anything else. */
export const dayOf = (cell: unknown): number | undefined =>
  typeof cell === "number"
    ? cell
    : typeof cell === "string" && ISO_DAY.test(cell.trim())
      ? daySerial(cell.trim())
      : undefined;

/** A value with its unit; text that is no quantity stands in quotation marks without one. */
export const inUnit = (value: unknown, unit = ""): string =>
  typeof value === "number" || /^[<>] [\d.]/.test(String(value))
    ? `${said(value)} ${unit}`.trimEnd()
    : `"${String(value ?? "").slice(0, 40)}"`;

/** A number as it is said in a message, also one with a bound: at most six significant digits. */
export const said = (value: unknown): string =>
  typeof value === "number"
    ? String(Number(value.toPrecision(6)))
    : String(value ?? "").replace(
        /^([<>] )([\d.e+-]+)$/,
        (_text, bound, number) => bound + said(Number(number)),
      );
