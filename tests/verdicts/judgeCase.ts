import type { Lineup } from "../../src/lineup/lineup";
import { evaluate } from "../../src/records/evaluate";
import { type CellValue, type RecordKind, type Row, verdictOf } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { checkLineup } from "../../src/records/readLineup";
import { rowsOf } from "../../src/records/rowsOf";
import { english } from "../support/inWords";

/** Cells of a row by column id, as a person types them; days as ISO dates. */
type Typed = Readonly<Record<string, CellValue>>;

/** One row of a record with the verdict that an engineer of the trade would sign. */
export interface VerdictCase {
  readonly id: string;
  readonly kind: string;
  /** A lineup as its JSON file has it. */
  readonly lineup: unknown;
  /** The cells that pick the row. */
  readonly key: Typed;
  readonly entries: Typed;
  /** Entries of sister poles, similar joints and the like. */
  readonly beside?: readonly { readonly key: Typed; readonly entries: Typed }[];
  readonly neighbours?: readonly { readonly key: Typed; readonly entries: Typed }[];
  readonly expect: string;
  readonly acceptable: readonly string[];
  readonly why: string;
  readonly source: string;
  readonly sure: number;
}

/** What the program makes of a case: a verdict, or why there is none. */
export interface Judgement {
  readonly got: string;
  readonly row?: Row;
}

/** Builds the rows that the case's lineup needs, types the entries, and gives the verdict of the case's row. */
export function judgeCase({
  kind: id,
  lineup: json,
  key,
  entries,
  ...others
}: VerdictCase): Judgement {
  const lineup = checkLineup(json);
  if (!lineup.ok)
    return {
      got: lineup.errors.map(({ path, message }) => `${path} ${message(english)}`).join("; "),
    };
  const kind = KINDS.find((one) => one.id === id);
  if (!kind) return { got: `no record kind ${id}` };
  const typed = [{ key, entries }, ...(others.beside ?? []), ...(others.neighbours ?? [])];
  const rows = rowsOf(kind, lineup.value);
  const filled = rows.map((row) => {
    const ofRow = typed.find((one) => isRow(row, one.key));
    return ofRow ? { ...row, ...cellsOf(kind, ofRow.entries) } : row;
  });
  const at = rows.findIndex((row) => isRow(row, key));
  const missing = typed.find((one) => !rows.some((row) => isRow(row, one.key)));
  if (missing) return { got: `no row ${JSON.stringify(missing.key)}` };
  return ofRow(kind, filled, lineup.value, at);
}

const ofRow = (kind: RecordKind, rows: Row[], lineup: Lineup, at: number): Judgement => {
  const row = evaluate(kind, rows, lineup)[at] as Row;
  return { got: verdictOf(row), row };
};

const isRow = (row: Row, key: Typed) => Object.entries(key).every(([id, cell]) => row[id] === cell);

/** Settings that the relay was left to, as cells of their own: `asLeft: { pickup: 5 }` is `asLeftPickup`. */
const flat = (entries: Typed): Typed =>
  Object.fromEntries(
    Object.entries(entries).flatMap(([id, cell]) =>
      typeof cell === "object" && cell !== null
        ? Object.entries(cell).map(([key, part]) => [
            `${id}${key.slice(0, 1).toUpperCase()}${key.slice(1)}`,
            part as CellValue,
          ])
        : [[id, cell] as const],
    ),
  );

/** Entries as cells hold them: a day is a serial number. What the kind has no column for is refused. */
const cellsOf = (kind: RecordKind, entries: Typed): Row =>
  Object.fromEntries(
    Object.entries(flat(entries)).map(([id, cell]) => {
      const column = kind.columns.find((one) => one.id === id);
      if (!column) throw new Error(`${kind.id} has no column ${id}`);
      return [
        id,
        column.accepts?.type === "date" && typeof cell === "string" ? serial(cell) : cell,
      ];
    }),
  );

const DAY_MS = 86_400_000;

const serial = (day: string) => (Date.parse(day) - Date.UTC(1899, 11, 30)) / DAY_MS;
