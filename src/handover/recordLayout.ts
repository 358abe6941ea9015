import type { Column } from "../records/kind";
import { KINDS } from "../records/kinds";
import { SOURCES } from "../records/limits";
import type { HandedRow } from "./content";
import { type ExportLines, exportLines } from "./exportsOf";
import { shownCells, sourcesIn } from "./words";

/** How the records of one kind and panel stand on paper: each value once. */
export interface RecordLayout {
  /** What holds for every row, as title and value. */
  readonly common: readonly (readonly [title: string, value: string])[];
  /** Titles of what differs from row to row. */
  readonly titles: readonly string[];
  readonly lines: readonly RecordLine[];
  /** Where limits come from, each once. */
  readonly sources: readonly string[];
  /** The exports that readings were brought in from, with their lines. */
  readonly exports: readonly { readonly name: string; readonly lines: readonly number[] }[];
}

export interface RecordLine {
  readonly item: string;
  /** Under the titles. */
  readonly values: readonly string[];
  readonly result: HandedRow["result"];
}

const ORIGIN = "origin";

/** A row's printed values by title. */
type Values = ReadonlyMap<string, string>;

/** The columns of a record kind that a report prints, in their order; keys and result have their own place. */
function columnsOf(record: string): readonly Column[] {
  const columns = KINDS.find(({ id }) => id === record)?.columns ?? [];
  const settled = new Set(
    columns.flatMap(({ accepts }) => (accepts?.type === "list" ? (accepts.always ?? []) : [])),
  );
  return columns.filter(
    ({ id, role }) => role !== "key" && role !== "result" && id !== SOURCES && !settled.has(id),
  );
}

/**
 * Lays out rows of one record kind: what they have in common is told once, above the table, and so are the
 * exports that they come from; a time of the day that an export gives stands in the row.
 *
 * @param time title of the time of the day
 */
export function recordLayout(rows: readonly HandedRow[], time: string): RecordLayout {
  const record = rows[0]?.record ?? "";
  const all = columnsOf(record);
  const origin = all.find(({ id }) => id === ORIGIN)?.header ?? "";
  const printed = rows.map((row): Values => shownCells(row));
  const lines = printed.map((row) => exportLines(row.get(origin) ?? ""));
  const areLines = printed.every((row, at) => lines[at] || !row.has(origin));
  const values = areLines
    ? printed.map((row, at): Values => new Map([...row, [time, timesIn(lines[at])]]))
    : printed;
  const told = all.filter(
    ({ header }) => !(areLines && header === origin) && values.some((row) => row.has(header)),
  );
  const isSame = (header: string) => new Set(values.map((row) => row.get(header))).size === 1;
  const isCommon = (column: Column) =>
    rows.length > 1 ? isSame(column.header) : isBackground(column);
  const titles = told.filter((column) => !isCommon(column)).map(({ header }) => header);
  if (areLines && lines.some((some) => timesIn(some) !== "")) titles.push(time);
  return {
    common: told
      .filter(isCommon)
      .map(({ header }) => [header, values[0]?.get(header) ?? ""] as const),
    titles,
    lines: rows.map(({ row, result }, at) => ({
      item: row.split(" · ").slice(1).join(" · ") || row,
      values: titles.map((title) => values[at]?.get(title) ?? ""),
      result,
    })),
    sources: [...new Set(rows.flatMap(({ sources }) => sourcesIn(sources)))],
    exports: areLines ? gathered(lines.flatMap((some) => some ?? [])) : [],
  };
}

/** What a single row was tested under and by whom, which stands above it as above several. */
const isBackground = ({ role, need }: Column): boolean =>
  role === "given" || need === "condition" || need === "trail";

/** When the exports say that a record was read, each time once. */
const timesIn = (found: readonly ExportLines[] | undefined): string =>
  [...new Set((found ?? []).map(({ time }) => time).filter(Boolean))].join(", ");

function gathered(found: readonly ExportLines[]): RecordLayout["exports"] {
  const files = new Map<string, Set<number>>();
  for (const { name, lines } of found)
    files.set(name, new Set([...(files.get(name) ?? []), ...lines]));
  return [...files].map(([name, found]) => ({
    name,
    lines: [...found].sort((a, b) => a - b),
  }));
}

/** Numbers with their runs drawn together: `3, 5 to 8`. */
export function inRuns(numbers: readonly number[], to: string): string {
  const runs: [first: number, last: number][] = [];
  for (const number of numbers) {
    const run = runs.at(-1);
    if (run && number === run[1] + 1) run[1] = number;
    else runs.push([number, number]);
  }
  return runs
    .map(([first, last]) => (first === last ? `${first}` : `${first} ${to} ${last}`))
    .join(", ");
}
