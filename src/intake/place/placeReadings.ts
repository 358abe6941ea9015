import { serialDay } from "../../quantities/dates";
import { quoted } from "../../quantities/quoted";
import { type CellValue, type Column, isBlank, keyIds, rowKey } from "../../records/kind";
import { a1 } from "../../sheets/address";
import type { ExportTable } from "../table/exportTable";
import type { ArrivalOptions, Say } from "./arrival";
import { arrivalsByRow } from "./arrivals";
import { isSameCell } from "./isSameCell";
import type { Conflict, Kept, PlacedCell, Placement, Suggestion, Unplaced } from "./placement";
import { hasCell, type RecordRows } from "./recordRows";
import { type Repeated, resolveRepeats, type Settled } from "./resolveRepeats";
import { sharedCells } from "./sharedCells";
import { staleCells } from "./staleCells";

export interface PlaceOptions extends ArrivalOptions {
  /** Whether cells that hold something else may be written over. */
  readonly replace: boolean;
}

/**
 * Matches each line of an export with the row of a record table that it belongs to, and sorts its
 * cells into those to be placed, those there already, those that would overwrite, and those that
 * cannot be placed. Nothing is guessed.
 *
 * A line that would overwrite a cell is held back as a whole, so that no reading comes to stand
 * beside the conditions of another. Of two lines for one row that disagree, the later is taken where
 * both have date and time, else neither; what is not taken, and what is written over, goes to the history.
 * A value that its table has no cell for is not placed; of a line none of whose readings has one, nothing is.
 * A cell that several records share takes what the lines for all of them say.
 *
 * @param tables the record tables as stored; those of a workbook's snapshot, or rows alone
 * @example placeReadings(exported, recordTables(snapshot), { replace: false }).placed
 */
export const placeReadings = <T extends RecordRows>(
  exported: ExportTable,
  tables: readonly T[],
  options: PlaceOptions,
): Placement<T> => {
  const placed: PlacedCell<T>[] = [];
  const same: PlacedCell<T>[] = [];
  const conflicts: Conflict<T>[] = [];
  const unplaced: Unplaced[] = [];
  const kept: Kept<T>[] = [];
  const asked = new Map<string, Suggestion & { lines: number[] }>();
  const say: Say = (line, reason, suggestion) => {
    unplaced.push({ source: { file: exported.name, line }, reason });
    if (!suggestion) return;
    const key = `${suggestion.field} ${suggestion.written}`;
    const sofar = asked.get(key);
    if (sofar) sofar.lines.push(line);
    else asked.set(key, { ...suggestion, lines: [line] });
  };

  const lines = arrivalsByRow(exported, tables, options, say).flatMap(
    (group) => resolveRepeats(group, say) ?? [],
  );
  const shared = sharedCells(lines);
  for (const line of lines) {
    kept.push(...line.earlier.flatMap((earlier) => repeats(earlier, line, exported.name)));
    const all = cellsOf(line, exported.name);
    const lacking = all.filter(
      (cell) => !hasCell(cell.table, cell.row, cell.column) && !isSame(cell),
    );
    const readings = all.filter(isReading);
    const isLost = readings.length > 0 && readings.every((cell) => lacking.includes(cell));
    if (lacking.length > 0) say(line.line, noCell(lacking, isLost));
    if (isLost) continue;
    const cells = all.filter((cell) => {
      if (lacking.includes(cell)) return false;
      const reason = isBlank(cell.old) ? shared.contradicted(cell) : undefined;
      if (reason)
        say(
          line.line,
          `${reason}; it is left blank and the rest of the line stands. Give each record a cell of its own.`,
        );
      return reason === undefined;
    });
    const held = cells.filter(({ old }) => !isBlank(old));
    const against = held.filter((cell) => !isSame(cell));
    const fresh = cells.filter(({ old }) => isBlank(old));
    same.push(...held.filter(isSame));
    const stands = standing(line);
    const before = placed.length;
    if (against.length === 0) {
      if (fresh.length > 0) placed.push(...fresh, ...originCell(line, exported.name, false));
    } else if (!options.replace) conflicts.push(...against.map((cell) => ({ ...cell, stands })));
    else if (stands === "later") {
      kept.push(...against.map((cell) => keptOf(cell, cell.value, line.when ?? line.day)));
      say(
        line.line,
        "is of an earlier day than what stands there, and is not written over it; it goes to the history.",
      );
    } else {
      const [why] = against.flatMap(
        (cell) => shared.contradicted(cell) ?? shared.ofOthers(cell) ?? [],
      );
      if (why !== undefined) {
        say(
          line.line,
          `${why}; nothing of the line is placed. Bring in lines for all of them that agree, or give each record a cell of its own.`,
        );
        continue;
      }
      const stale = staleOf(line, against, exported.name, say);
      kept.push(...[...against, ...stale].map(replacedBy));
      placed.push(...fresh, ...against, ...stale, ...originCell(line, exported.name, true));
    }
    for (const cell of placed.slice(before)) {
      const reason = textUnderFormula(cell);
      if (reason) say(line.line, reason);
    }
  }
  unplaced.sort((one, other) => one.source.line - other.source.line);
  return { placed, same, conflicts, unplaced, suggested: [...asked.values()], kept };
};

const cellsOf = <T extends RecordRows>(
  { table, row, cells, line, when, day }: Settled<T>,
  file: string,
): PlacedCell<T>[] => {
  const taken = when ?? day;
  const source = taken === undefined ? { file, line } : { file, line, when: taken };
  return cells.map(([column, value]) => ({
    table,
    row,
    column,
    old: table.rows[row]?.[column] ?? null,
    value,
    source,
  }));
};

const columnOf = ({ table, column }: PlacedCell<RecordRows>): Column | undefined =>
  table.kind.columns.find(({ id }) => id === column);

const isReading = (cell: PlacedCell<RecordRows>) => columnOf(cell)?.need === "reading";

/** Why values of a line are not placed: their table has no cell for them. */
const noCell = (cells: readonly PlacedCell<RecordRows>[], isWholeLine: boolean): string => {
  const [{ table, row }] = cells as [PlacedCell<RecordRows>];
  const { kind, rows } = table;
  const named = cells.map((cell) => {
    const column = columnOf(cell);
    return `${quoted(column?.header ?? cell.column)} (${shownIn(cell.value, column?.accepts)})`;
  });
  const rest = isWholeLine
    ? "and nothing of the line is placed"
    : "and the rest of the line stands";
  return `the sheet ${quoted(table.table?.sheet ?? kind.sheet)} has no cell for ${named.join(", ")} of ${rowKey(rows[row] ?? {}, keyIds(kind))}, ${rest}; add a column for ${cells.length === 1 ? "it" : "them"} there.`;
};

/** What is to be known of a reading that goes as text into a cell of somebody's own layout which formulas there take. */
const textUnderFormula = (cell: PlacedCell<RecordRows>): string | undefined => {
  const { table, row, column, value } = cell;
  const { ownLayout, sheet = "" } = table.table ?? {};
  const at = table.at?.get(column);
  if (!ownLayout || at === undefined || !isReading(cell)) return undefined;
  const written = ownLayout.written(row, at, value);
  const there = ownLayout.holds(row, at);
  const [first, ...others] = ownLayout.takenBy?.(row, at) ?? [];
  if (typeof written !== "string" || !there || !first) return undefined;
  const also = others.map((one) => a1(one.row, one.column));
  return `${quoted(written)} goes into ${a1(there.row, there.column)} of the sheet ${quoted(sheet)} as text, and the formula at ${a1(first.row, first.column)} (${`=${first.formula}`.slice(0, 80)})${also.length > 0 ? `, as those at ${also.join(", ")},` : ""} takes that cell: with text, arithmetic gives #VALUE!, a comparison takes it for more than any number, so that it can say "pass", and sums and averages leave it out. Judge this row by hand or by the check, and not by ${also.length > 0 ? "these cells" : "that cell"}.`;
};

/** Whether the record that stands is of an earlier or a later day than a line. */
const standing = ({ table, row, day }: Settled<RecordRows>): Conflict<RecordRows>["stands"] => {
  const stored = table.rows[row]?.date;
  if (typeof stored !== "number" || day === undefined || stored === day) return "open";
  return stored > day ? "later" : "earlier";
};

const keptOf = <T extends RecordRows>(
  { table, row, column, source }: PlacedCell<T>,
  value: CellValue,
  when: number | undefined,
): Kept<T> => ({
  table,
  row,
  column,
  value,
  when,
  source: `${plainName(source.file)} line ${source.line}`,
});

/** What stood on the record before. */
const replacedBy = <T extends RecordRows>(cell: PlacedCell<T>): Kept<T> => {
  const stored = cell.table.rows[cell.row];
  const day = stored?.date;
  return {
    ...keptOf(cell, cell.old, typeof day === "number" ? day : undefined),
    source: isBlank(stored?.origin) ? "typed" : String(stored?.origin),
  };
};

/** What an earlier line of the same export says otherwise than the one that is taken. */
const repeats = <T extends RecordRows>(
  earlier: Repeated<T>,
  taken: Settled<T>,
  file: string,
): Kept<T>[] => {
  const now = new Map(taken.cells);
  return earlier.cells.flatMap(([column, value]) =>
    column === "date" || isSameCell(value, now.get(column) ?? null, taken.table.kind, column)
      ? []
      : [
          {
            table: earlier.table,
            row: earlier.row,
            column,
            value,
            when: earlier.when,
            source: `${plainName(file)} line ${earlier.line}`,
          },
        ],
  );
};

/** Where a reading is replaced, the cells to blank that are of the test before; and what is to be known of it. */
const staleOf = <T extends RecordRows>(
  line: Settled<T>,
  against: readonly PlacedCell<T>[],
  file: string,
  say: Say,
): PlacedCell<T>[] => {
  const { table, row } = line;
  const { columns } = table.kind;
  const readings = against.filter(({ column }) =>
    columns.some(({ id, need }) => id === column && need === "reading"),
  );
  if (readings.length === 0) return [];
  const given = new Set(line.cells.map(([column]) => column));
  const { gone, left } = staleCells(table, row, given, line.day);
  const stored = table.rows[row] ?? {};
  const named = (some: readonly Column[]) =>
    some.map(({ header, id, accepts }) => `${header} (${shownIn(stored[id], accepts)})`).join(", ");
  const because = (why: (typeof left)[number]["why"]) =>
    named(left.flatMap((one) => (one.why === why ? one.column : [])));
  if (gone.length > 0)
    say(
      line.line,
      `replaces a reading and does not give ${named(gone)}, which was of the test before and goes to the history; bring in a line with all that the record needs.`,
    );
  for (const [why, reason] of [
    ["same day", "is of the same day"],
    ["other rows", "is of other rows too"],
  ] as const)
    if (because(why) !== "")
      say(
        line.line,
        `replaces a reading and does not give ${because(why)}, which ${reason} and stays; correct it where it was another.`,
      );
  return gone.map(({ id }) => ({
    table,
    row,
    column: id,
    old: stored[id] ?? null,
    value: null,
    source: { file, line: line.line },
  }));
};

const shownIn = (value: CellValue | undefined, accepts: Column["accepts"]): string =>
  accepts?.type === "date" && typeof value === "number"
    ? serialDay(value)
    : String(value ?? "").slice(0, 40);

const isSame = ({ old, value, table, column }: PlacedCell<RecordRows>) =>
  isSameCell(old, value, table.kind, column);

/** The origin column's new text. It keeps what it held, unless readings were written over. */
const originCell = <T extends RecordRows>(
  { table, row, line, lines, when }: Settled<T>,
  file: string,
  replaced: boolean,
): PlacedCell<T>[] => {
  const exists =
    table.kind.columns.some(({ id }) => id === "origin") && hasCell(table, row, "origin");
  const old = table.rows[row]?.origin ?? null;
  const told = lines.length <= 8 ? lines.join(", ") : `${lines.slice(0, 8).join(", ")} …`;
  const text = `${plainName(file)} line ${told}${when === undefined ? "" : ` at ${clock(when)}`}`;
  if (!exists || (!isBlank(old) && String(old).split("; ").includes(text))) return [];
  const value = isBlank(old) || replaced ? text : `${old}; ${text}`;
  return [{ table, row, column: "origin", old, value, source: { file, line } }];
};

/** The time of day of a serial number, as 09:14. */
const clock = (when: number): string => {
  const minutes = Math.round((when % 1) * 1440) % 1440;
  const two = (part: number) => String(part).padStart(2, "0");
  return `${two(Math.floor(minutes / 60))}:${two(minutes % 60)}`;
};

/** A file's name as a cell may hold it: one line that no spreadsheet takes for a formula. */
const plainName = (file: string): string =>
  file
    .replace(/[\p{Cc}\p{Cf}]+/gu, " ")
    .replace(/^[\s=+\-@|＝＋－＠]+/, "")
    .slice(0, 120) || "export";
