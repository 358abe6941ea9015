import type { Lineup } from "../lineup/lineup";
import type { FindingsText, RuleId } from "../messages/messages";
import { daySerial, LAST_DAY } from "../quantities/dates";
import {
  type CellValue,
  type Column,
  isBlank,
  isNeeded,
  type KindRole,
  type RecordKind,
  type Row,
} from "../records/kind";
import { written } from "../records/written";
import { a1, cellAddress } from "../sheets/cells/address";
import type { InstrumentRow } from "../sheets/ours/instrumentSheet";
import type { RecordBook } from "../sheets/recordBook";
import type { RecordTable } from "../sheets/recordTable";
import type { Snapshot } from "../sheets/snapshot";
import type { Finding } from "./findings/finding";
import type { Reach } from "./findings/gatherFindings";
import type { OpenRows } from "./progress/openRows";

/** A record table with every row computed again from its entries. */
export interface JudgedTable extends RecordTable {
  readonly judged: readonly Row[];
  /** What names each row: its key cells in order. */
  readonly keys: readonly string[];
  /** What the lineup gives for each row that it needs, by key. */
  readonly given: ReadonlyMap<string, Row>;
  /** Rows that are not judged: their panel is none of the lineup's, or they are blank. */
  readonly aside: ReadonlySet<number>;
  /** Rows of tests of which nothing is recorded yet. */
  readonly open: ReadonlySet<number>;
  /** False where formulas stand without their values, as a program that cannot calculate leaves them. */
  readonly calculated: boolean;
}

/** What every rule works from. */
export interface Context {
  /** The workbook as it was opened. */
  readonly book: RecordBook;
  /** The workbook as it was read. */
  readonly snapshot: Snapshot;
  /** The lineup that the records are judged by. */
  readonly lineup: Lineup;
  /** The lineup as the cover, panels and criteria sheets tell it; undefined where they do not tell it in full. */
  readonly told: Lineup | undefined;
  readonly tables: readonly JudgedTable[];
  /** Undefined where the workbook has no table of instruments. */
  readonly instruments: ReadonlyMap<string, InstrumentRow> | undefined;
  /** What rows of tests that were not begun are to this check. */
  readonly openRows: OpenRows;
  /** The day of the check, as a serial day number. */
  readonly today: number;
  /** What was not understood of blocks in somebody's own layout. */
  readonly unmapped?: readonly Finding[];
  /** What the findings say, in the language that the host hands down. */
  readonly text: FindingsText;
}

/**
 * One check rule: pure, and quiet where it has nothing to say. What it reads tells what an edit may
 * change of its findings: those of the edited rows, of the edited table, or of the kinds it looks at.
 * What it says, and what the reference says of it, stands among the texts under its id.
 */
export type Rule = {
  /** By which its findings, a concession and the project's settings name the rule. */
  readonly id: RuleId;
  /**
   * How far one cause of its findings reaches, so that what rows there say in the same words is one finding;
   * without it, it tells each of its rows.
   */
  readonly reach?: Reach;
} & (
  | {
      readonly reads: "row";
      /** The only kinds that it looks at; without it, every kind. */
      readonly of?: OfKinds;
      /** Made once for a table, so that nothing is worked out anew for each of its rows. */
      readonly rows: (table: JudgedTable, context: Context) => RowRule;
      /** All rows that it may say anything of, found column by column where a whole table is looked at. */
      readonly among: (table: JudgedTable, context: Context) => readonly number[];
    }
  | {
      readonly reads: "table";
      readonly find: (table: JudgedTable, context: Context) => Finding[];
    }
  | {
      readonly reads: "book";
      /** The kinds that it looks at; none where it looks at the lineup alone. */
      readonly of: OfKinds;
      readonly find: (context: Context) => Finding[];
    }
);

/** Whether a rule looks at a record kind. */
export type OfKinds = (kind: RecordKind) => boolean;

export const everyKind: OfKinds = () => true;
export const noKind: OfKinds = () => false;

/** The kinds that are one of these to the others. */
export const withRole =
  (...roles: readonly KindRole[]): OfKinds =>
  ({ role }) =>
    role !== undefined && roles.includes(role);

/** Where a finding stands: the record, its panel, and the cell of a column. */
export function where(table: JudgedTable, row: number, column: string) {
  // A layout of somebody's own names what it has no column for by the reading that it comes from.
  const at = table.at.get(column) ?? (table.table.ownLayout ? -1 : 0);
  return {
    record: table.kind.id,
    panel: String(table.rows[row]?.object ?? ""),
    sheet: table.table.sheet,
    address: cellAddress(table.table, row, at),
    row: rowName(table, row),
    column: headerOf(table, column),
  };
}

/** Where a finding stands that is about a table as a whole: its first header. */
export const whereTable = ({ kind, table }: Pick<JudgedTable, "kind" | "table">) => ({
  record: kind.id,
  sheet: table.sheet,
  address: a1(table.top, table.left),
});

/** A row in words: `Bus A · Busbar · L1-E · before`. */
export const rowName = (table: JudgedTable, row: number): string => table.keys[row] ?? "";

/** Whether a cell holds a value of its own to be compared: in a table that was not calculated, only what was typed. */
export const isStored = ({ table, at, rows, calculated }: JudgedTable, row: number, id: string) =>
  calculated || (table.formula(row, at.get(id) ?? -1) === undefined && !isBlank(rows[row]?.[id]));

/** Header of a column. */
export const headerOf = (table: JudgedTable, id: string): string =>
  table.kind.columns.find((column) => column.id === id)?.header ?? id;

/** Looks at one row of a table; says what it finds. */
export type RowRule = (row: number, stored: Row, judged: Row) => Finding | undefined | Finding[];

/** Runs a rule over the rows of a table that are judged, or over some of them; each finding with its row. */
export function overRows(
  table: JudgedTable,
  rule: RowRule,
  some?: readonly number[],
): { readonly row: number; readonly finding: Finding }[] {
  const told: { row: number; finding: Finding }[] = [];
  const { rows, judged, aside } = table;
  const visit = (row: number) => {
    const [stored, computed] = [rows[row], judged[row]];
    if (!stored || !computed || aside.has(row)) return;
    const findings = rule(row, stored, computed) ?? [];
    if (Array.isArray(findings)) for (const finding of findings) told.push({ row, finding });
    else told.push({ row, finding: findings });
  };
  if (some) some.forEach(visit);
  else for (let row = 0; row < rows.length; row++) visit(row);
  return told;
}

/** Runs a rule over the rows of some kinds' tables. */
export const overKinds = (
  { tables }: Context,
  of: OfKinds,
  prepare: (table: JudgedTable) => RowRule,
): Finding[] =>
  tables
    .filter(({ kind }) => of(kind))
    .flatMap((table) => overRows(table, prepare(table)).map(({ finding }) => finding));

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
    if (isBlank(stored[column.id]) && isNeeded(column, stored, lineup)) {
      found ??= [];
      found.push(column);
    }
  return found;
};

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** The day in a cell as a serial number: a date, or text as 2026-11-25; undefined for anything else. */
export const dayOf = (cell: unknown): number | undefined =>
  typeof cell === "number"
    ? cell >= 1 && cell < LAST_DAY
      ? cell
      : undefined
    : typeof cell === "string" && ISO_DAY.test(cell.trim())
      ? daySerial(cell.trim())
      : undefined;

/** A value with its unit; text that is no quantity stands in quotation marks without one. */
export const inUnit = (value: unknown, unit = ""): string =>
  typeof value === "number" || /^[<>] [\d.]/.test(String(value))
    ? `${said(value)} ${unit}`.trimEnd()
    : `"${String(value ?? "").slice(0, 40)}"`;

/** A cell of a judged row with its unit, with the digits that a test engineer writes. */
export const writtenIn = (
  { kind }: Pick<JudgedTable, "kind">,
  judged: Row,
  id: string,
  unit = "",
): string =>
  typeof judged[id] === "number"
    ? `${written(kind, judged, id)} ${unit}`.trimEnd()
    : inUnit(judged[id], unit);

/** A cell as it is said in a message, also a blank one. */
export const shown = (
  cell: CellValue | undefined,
  { blank }: Pick<FindingsText, "blank">,
): string => (isBlank(cell) ? blank : said(cell));

/** A number as it is said in a message, also one with a bound: at most six significant digits. */
export const said = (value: unknown): string =>
  typeof value === "number"
    ? String(Number(value.toPrecision(6)))
    : String(value ?? "").replace(
        /^([<>] )([\d.e+-]+)$/,
        (_text, bound, number) => bound + said(Number(number)),
      );
