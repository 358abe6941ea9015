import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import type { Column, RecordKind } from "../../records/kind";
import type { ExportBlock, ExportTable } from "../table/exportTable";
import { MAX_PLAIN } from "../table/layout";
import { withoutComment } from "../table/splitComment";
import type { ExportRow } from "../table/unpivot";
import { columnFor } from "../words/columnFor";
import { memoizeText } from "../words/memoizeText";
import { partNamed } from "../words/partNamed";
import { readDate, readTime } from "../words/readDate";
import type { Arrival, Say } from "./arrival";
import type { ArrivalOptions } from "./arrivalOptions";
import { cellValue } from "./cellValue";
import { inRowUnit } from "./inRowUnit";
import { type Entry, type Known, type Line, lineReader, type ReadCell } from "./lineReader";
import { meaning } from "./meaning";
import { byColumn, onlyOne, readCell } from "./readCell";
import type { RecordRows } from "./recordRows";
import type { Repeated } from "./resolveRepeats";
import { type Finding, type Lost, rowFinder } from "./rowFinder";
import { type Gathered, rowGroups } from "./rowGroups";
import { tablesFor } from "./tablesFor";

/**
 * Finds for each line of an export its record table, its row and its cells.
 *
 * @param say is told of each line or cell that cannot be placed, and why
 * @returns the lines of each row, those that say just the same once
 */
export const arrivalsByRow = <T extends RecordRows>(
  table: ExportTable,
  tables: readonly T[],
  options: ArrivalOptions,
  say: Say,
): readonly (readonly Repeated<T>[])[] => {
  const meant = meaning(options);
  const find = placeFinder(rowFinder(tables, table.positions));
  const cellsOf = cellReader(table, options);
  const dayOf = memoizeText((text) => {
    const date = readDate(text, table.dates);
    return date.ok ? date.value : undefined;
  });
  const timeOf = memoizeText(readTime);
  const groups = rowGroups<T>();
  /** Lines of the table of which everything was taken, and what they are kept as: long exports say them again and again. */
  const taken = new Map<number, { readonly first: Arrival<T>; readonly as: Gathered<T> }>();
  let said = 0;
  const saying: Say = (...words) => {
    said += 1;
    say(...words);
  };
  let of: ExportBlock | undefined;
  let readLine: ReturnType<typeof lineReader<Among<T>>> | undefined;
  let timeAt: number | undefined;
  for (const { block, row, like } of table.each()) {
    if (block !== of || readLine === undefined) {
      of = block;
      readLine = lineReader(block, meant);
      timeAt = block.columns.find(({ field }) => field === "time")?.index;
      taken.clear();
    }
    const again = like === undefined ? undefined : taken.get(like);
    if (again) {
      const { first, as } = again;
      const when =
        timeAt === undefined ? first.when : momentOf(first.day, timeOf(cellIn(row, timeAt)));
      if ((when === undefined) === (first.when === undefined)) {
        as.lines.push(row.line);
        if ((when ?? 0) > (as.when ?? 0)) later(as, first, row.line, when);
        continue;
      }
    }
    const line = readLine(row);
    const among = isTorn(row, block) ?? amongOf(line, tables, block);
    if (!among.ok) {
      say(row.line, among.reason, among.suggestion);
      continue;
    }
    const found = find(line, among);
    if (!found.ok) {
      say(row.line, found.reason, found.suggestion);
      continue;
    }
    const before = said;
    const cells = cellsOf(row.line, line, found.value, saying);
    if (!cells) continue;
    const written = line.parts[line.shape.date]?.text ?? "";
    const day = dayOf(written);
    const time = timeOf(line.parts[line.shape.time]?.text ?? "") ?? timeOf(written);
    const when = momentOf(day, time);
    const { value: place } = found;
    const first = { table: place.table, row: place.row, line: row.line, cells, day, when };
    const as = groups.add(first);
    if (said === before && taken.size < MAX_PLAIN) taken.set(row.line, { first, as });
  }
  return groups.all();
};

/** What is kept of lines that say the same becomes what the latest of them says. */
const later = <T extends RecordRows>(
  as: Gathered<T>,
  { cells, day }: Arrival<T>,
  line: number,
  when: number | undefined,
): void => {
  as.line = line;
  as.when = when;
  as.cells = cells;
  as.day = day;
};

const momentOf = (day: number | undefined, time: number | undefined): number | undefined =>
  day !== undefined && time !== undefined ? day + time : undefined;

/** One cell of a line, which is not parted for it. */
const cellIn = (row: ExportRow, cell: number): string => {
  const [from, to] = row.span?.(cell) ?? [0, 0];
  return (row.text === undefined ? (row.cells[cell] ?? "") : row.text.slice(from, to)).trim();
};

/** The record tables that lines of a shape and of these quantities can belong to, and what was found there. */
type Among<T extends RecordRows> =
  | { readonly ok: true; readonly tables: readonly T[]; readonly rows: Branch<Finding<T>> }
  | Lost;

/** What was found, by one part of a line after the other. */
interface Branch<Found> {
  found?: Found;
  readonly next: Map<Known | undefined, Branch<Found>>;
}

const amongOf = <T extends RecordRows>(
  line: Line<Among<T>>,
  tables: readonly T[],
  block: ExportBlock,
): Among<T> => {
  const { parts, shape } = line;
  const { last } = shape;
  if (last && isMarked(parts, last.marks)) return last.found;
  const marks = parts.map(({ mark }) => mark);
  const key = marks.join("|");
  const before = shape.found.get(key);
  if (before) {
    shape.last = { marks, found: before };
    return before;
  }
  const written = new Map(parts.map((part) => [part.field, part]));
  const found = tablesFor(tables, written, written.get("test")?.name ?? "", block);
  const among: Among<T> = found.ok
    ? { ok: true, tables: found.value, rows: { next: new Map() } }
    : found;
  // A refusal names the line's own text.
  if (found.ok) shape.found.set(key, among);
  return among;
};

const isMarked = (parts: readonly Known[], marks: readonly string[]): boolean => {
  for (let at = 0; at < marks.length; at++) if (parts[at]?.mark !== marks[at]) return false;
  return true;
};

/** The search for rows, which answers the same question once. */
const placeFinder = <T extends RecordRows>(find: ReturnType<typeof rowFinder<T>>) => {
  let left = MAX_REMEMBERED;
  return (
    { shape, parts }: Line<Among<T>>,
    { tables, rows }: Extract<Among<T>, { ok: true }>,
  ): Finding<T> => {
    const { objects, others } = shape.place;
    let object: Known | undefined;
    for (let at = 0; at < objects.length && !object?.name; at++)
      object = parts[objects[at] as number];
    // Panels are many, so that they come last: their branches are few then, and large.
    let branch: Branch<Finding<T>> | undefined = rows;
    for (let at = 0; at < others.length && branch; at++)
      branch = grown(branch, parts[others[at] as number]);
    branch = branch && grown(branch, object);
    const before = branch?.found;
    if (before) return before;
    const [part = "", position, stage, operation = ""] = others.map((at) => parts[at]?.name ?? "");
    const found = find(
      {
        object: object?.name ?? "",
        part: partNamed(part, operation),
        position: position ?? "",
        stage: stage ?? "",
      },
      tables,
    );
    if (branch) branch.found = found;
    return found;
  };
  function grown(branch: Branch<Finding<T>>, part: Known | undefined) {
    const before = branch.next.get(part);
    if (before || left === 0 || part?.kept === false) return before;
    left -= 1;
    const made: Branch<Finding<T>> = { next: new Map() };
    branch.next.set(part, made);
    return made;
  }
};

const MAX_REMEMBERED = 200_000;

/** A column of the records, and which parts of a line give something for it. */
interface Taken {
  readonly column: Column;
  readonly from: readonly number[];
}

/** Reads a line's cells; undefined for a line whose reading itself cannot be taken. */
const cellReader = (table: ExportTable, { instruments = [], wave }: ArrivalOptions) => {
  const columns = columnFinder();
  const plans = new Map<Line<unknown>["shape"], Map<RecordRows, readonly Taken[]>>();
  const planOf = ({ shape, parts }: Line<unknown>, of: RecordRows): readonly Taken[] => {
    const known = plans.get(shape) ?? new Map<RecordRows, readonly Taken[]>();
    plans.set(shape, known);
    const before = known.get(of);
    if (before) return before;
    const written = new Map(parts.map((part) => [part.field, part]));
    const plan = [...byColumn(of, written, columns)].map(
      ([column, candidates]): Taken => ({
        column,
        from: candidates.map(({ field }) => shape.at.get(field) as number),
      }),
    );
    known.set(of, plan);
    return plan;
  };
  let last: { shape: unknown; of: RecordRows; plan: readonly Taken[] } | undefined;
  const read = (column: Column, candidates: readonly Known[]): Result<ReadCell> => {
    const one = onlyOne(column, candidates, instruments);
    if (!one.ok) return one;
    const { value, comment } = withoutComment(one.value.text, column, (text) =>
      readCell({ ...one.value, text }, column, table, table.dates, wave),
    );
    return value.ok ? answer({ entry: [column.id, value.value], comment }) : value;
  };
  const readOnce = (column: Column, part: Known): Result<ReadCell> => {
    if (part.column === column && part.read) return part.read;
    part.column = column;
    part.read = read(column, [part]);
    return part.read;
  };
  return (
    number: number,
    line: Line<unknown>,
    { table: of, row }: { readonly table: RecordRows; readonly row: number },
    say: Say,
  ): readonly Entry[] | undefined => {
    if (last?.shape !== line.shape || last.of !== of)
      last = { shape: line.shape, of, plan: planOf(line, of) };
    const { plan } = last;
    const cells: Entry[] = [];
    let comments: string[] | undefined;
    for (let at = 0; at < plan.length; at++) {
      const { column, from } = plan[at] as Taken;
      const one =
        from.length === 1 && column.unitIn === undefined
          ? readOnce(column, line.parts[from[0] as number] as Known)
          : read(
              inRowUnit(column, of.rows[row] ?? {}),
              from.map((at) => line.parts[at] as Known),
            );
      if (one.ok) {
        cells.push(one.value.entry);
        if (one.value.comment) comments = [...(comments ?? []), one.value.comment];
      } else {
        say(
          number,
          `${one.reason}${column.need === "reading" ? "" : ` (${column.header} only; the rest of the line stands)`}`,
        );
        if (column.need === "reading") return undefined;
      }
    }
    return comments ? remarked(cells, comments, of, (reason) => say(number, reason)) : cells;
  };
};

/** A line's cells with the comments that stood beside numbers in its remarks; what cannot stand there is said. */
const remarked = (
  cells: readonly Entry[],
  comments: readonly string[],
  { kind, at }: RecordRows,
  say: (reason: string) => void,
): readonly Entry[] => {
  const column = columnFor(kind, "remarks");
  const own = cells.find(([id]) => id === "remarks")?.[1];
  const told = [...new Set(comments)].join("; ");
  const text = own ? `${own}; ${told}` : told;
  const value =
    column && (!at || at.has(column.id))
      ? cellValue(text, column, {})
      : refuse("none", `${kind.sheet} has no column for remarks.`);
  if (value.ok) return [...cells.filter(([id]) => id !== "remarks"), ["remarks", value.value]];
  say(
    `the comment ${quoted(told)} beside a number is left out, its number is taken: ${value.reason}`,
  );
  return cells;
};

/** A line with more cells than titles has been parted in the wrong places. */
const isTorn = ({ cells, unclosed }: ExportRow, { columns }: ExportBlock): Lost | undefined =>
  unclosed
    ? refuse(
        "wrong",
        "a quotation mark opens a cell and none closes it, so that the line cannot be split into cells; close it at the cell's end, or take it out.",
      )
    : cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== "")
      ? refuse(
          "wrong",
          `has ${cells.length} cells under ${columns.length} titles; where a comma is decimal, the line needs another delimiter or quotation marks around the number.`,
        )
      : undefined;

/** `columnFor`, which answers the same question once. */
const columnFinder = (): typeof columnFor => {
  const known = new Map<RecordKind, Map<string, Column | undefined>>();
  return (kind, field) => {
    const columns = known.get(kind) ?? new Map<string, Column | undefined>();
    known.set(kind, columns);
    if (!columns.has(field)) columns.set(field, columnFor(kind, field));
    return columns.get(field);
  };
};
