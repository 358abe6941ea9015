import { memoizeText } from "../../quantities/memoizeText";
import { refuse } from "../../quantities/result";
import { cellReader } from "../cells/cellReader";
import type { ExportRow } from "../columns/unpivot";
import type { Lost } from "../rows/lost";
import { meaning } from "../rows/meaning";
import { type Among, placeFinder, tablesAmong } from "../rows/placeFinder";
import type { RecordRows } from "../rows/recordRows";
import { rowFinder } from "../rows/rowFinder";
import type { ExportBlock, ExportTable } from "../table/exportTable";
import { MAX_PLAIN } from "../table/layout";
import { readClock, readDate, readTime } from "../words/readDate";
import type { Arrival, ArrivalOptions, Say } from "./arrival";
import { type Line, lineReader } from "./lineReader";
import type { Repeated } from "./resolveRepeats";
import { type Gathered, rowGroups } from "./rowGroups";

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
  const groups = rowGroups<T>();
  const clock = clockOf(table);
  const find = placeFinder(rowFinder(tables, table.positions, options.panels));
  const cellsOf = cellReader(table, options);
  /** The line as it arrives; undefined where it cannot be placed. */
  const arrivalOf = (
    line: Line<Among<T>>,
    row: ExportRow,
    block: ExportBlock,
    saying: Say,
  ): Arrival<T> | undefined => {
    const among =
      isTorn(row, block) ??
      (block.open === undefined
        ? tablesAmong(line, tables, block)
        : ({ ...refuse("none", block.open) } as Lost));
    const found = among.ok ? find(line, among) : among;
    if (!found.ok) {
      saying(row.line, found.say, found.suggestion);
      return undefined;
    }
    const cells = cellsOf(line, found.value, (reason) => saying(row.line, reason));
    const retest = line.shape.at.has("retest");
    return (
      cells && {
        ...found.value,
        line: row.line,
        cells,
        ...(retest && { retest }),
        ...clock.timesOf(line),
      }
    );
  };
  let open: OpenBlock<T> | undefined;
  for (const { block, row, like } of table.each()) {
    if (open?.block !== block)
      open = { block, read: lineReader(block, meant), repeats: repeatsOf(block, clock) };
    const { read, repeats } = open;
    if (like !== undefined && repeats.add(row, like)) continue;
    let isWhole = true;
    const arrival = arrivalOf(read(row), row, block, (...words) => {
      isWhole = false;
      say(...words);
    });
    if (!arrival) continue;
    const as = groups.add(arrival);
    if (isWhole) repeats.keep(arrival, as);
  }
  return groups.all();
};

/** The block whose lines are being read. */
interface OpenBlock<T extends RecordRows> {
  readonly block: ExportBlock;
  readonly read: ReturnType<typeof lineReader<Among<T>>>;
  readonly repeats: ReturnType<typeof repeatsOf<T>>;
}

/** Reads days and times of day, the same text once. */
const clockOf = ({ dates }: ExportTable) => {
  const dayOf = memoizeText((text) => {
    const date = readDate(text, dates);
    return date.ok ? date.value : undefined;
  });
  const timeOf = memoizeText(readTime);
  return {
    timeOf,
    timesOf({ shape, parts }: Line<unknown>): Pick<Arrival<RecordRows>, "day" | "when"> {
      const written = parts[shape.date]?.text ?? "";
      const day = dayOf(written);
      const time = timeOf(parts[shape.time]?.text ?? "") ?? timeOf(written);
      return { day, when: momentOf(day, time) };
    },
  };
};

/**
 * The lines of a block of which everything was taken, and what they are kept as: long exports say them
 * again and again.
 */
const repeatsOf = <T extends RecordRows>(
  { columns }: ExportBlock,
  { timeOf }: ReturnType<typeof clockOf>,
) => {
  const taken = new Map<number, { readonly first: Arrival<T>; readonly as: Gathered<T> }>();
  const timeAt = columns.find(({ field }) => field === "time")?.index;
  return {
    keep(first: Arrival<T>, as: Gathered<T>): void {
      if (taken.size < MAX_PLAIN) taken.set(first.line, { first, as });
    },
    /** Adds a line that says the same as one above; false where it must be read by itself. */
    add(row: ExportRow, like: number): boolean {
      const known = taken.get(like);
      if (!known) return false;
      const { first, as } = known;
      const when =
        timeAt === undefined ? first.when : momentOf(first.day, timeIn(row, timeAt, timeOf));
      if ((when === undefined) !== (first.when === undefined)) return false;
      as.lines.push(row.line);
      if ((when ?? 0) > (as.when ?? 0)) becomeLater(as, first, row.line, when);
      return true;
    },
  };
};

/** What is kept of lines that say the same becomes what the latest of them says. */
const becomeLater = <T extends RecordRows>(
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

/** The time of day in one cell of a line, which is not parted for it. */
const timeIn = (
  row: ExportRow,
  cell: number,
  timeOf: (text: string) => number | undefined,
): number | undefined => {
  const span = row.span?.(cell);
  if (row.text === undefined || span === undefined) return timeOf((row.cells[cell] ?? "").trim());
  const [from, to] = span;
  return readClock(row.text, from, to) ?? timeOf(row.text.slice(from, to).trim());
};

/** A line with more cells than titles has been parted in the wrong places. */
const isTorn = ({ cells, unclosed }: ExportRow, { columns }: ExportBlock): Lost | undefined =>
  unclosed
    ? refuse("wrong", ({ intake }) => intake.rows.unclosed)
    : cells.length > columns.length && cells.slice(columns.length).some((cell) => cell !== "")
      ? refuse("wrong", ({ intake }) => intake.rows.torn(cells.length, columns.length))
      : undefined;
