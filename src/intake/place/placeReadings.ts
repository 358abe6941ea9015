import { isBlank } from "../../records/kind";
import { hasCell, type RecordRows } from "../rows/recordRows";
import type { ExportTable } from "../table/exportTable";
import type { ArrivalOptions, Say } from "./arrival";
import { arrivalsByRow } from "./arrivals";
import { cellsOf, isReading, isSame, originCell } from "./lineCells";
import { noCell, textUnderFormula } from "./placedNotes";
import type { Conflict, Kept, PlacedCell, Placement, Suggestion, Unplaced } from "./placement";
import { keptOf, repeats, replacedBy, staleOf } from "./replaced";
import { resolveRepeats, type Settled } from "./resolveRepeats";
import { type SharedCells, sharedCells } from "./sharedCells";

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
  const unplaced: Unplaced[] = [];
  const suggestions = suggestionsOf();
  const say: Say = (line, reason, suggestion) => {
    unplaced.push({ source: { file: exported.name, line }, reason });
    if (suggestion) suggestions.add(line, suggestion);
  };
  const lines = arrivalsByRow(exported, tables, options, say).flatMap(
    (group) => resolveRepeats(group, say) ?? [],
  );
  const sorting: Sorting<T> = {
    file: exported.name,
    replace: options.replace,
    shared: sharedCells(lines),
    say,
    sorted: { placed: [], same: [], conflicts: [], kept: [] },
  };
  for (const line of lines) sortLine(line, sorting);
  unplaced.sort((one, other) => one.source.line - other.source.line);
  return { ...sorting.sorted, unplaced, suggested: suggestions.all() };
};

/** Gathers names that no row has, each once with its lines. */
const suggestionsOf = () => {
  const byName = new Map<string, Suggestion & { lines: number[] }>();
  return {
    add(line: number, suggestion: Omit<Suggestion, "lines">): void {
      const key = `${suggestion.field} ${suggestion.written}`;
      const known = byName.get(key);
      if (known) known.lines.push(line);
      else byName.set(key, { ...suggestion, lines: [line] });
    },
    all: (): Suggestion[] => [...byName.values()],
  };
};

/** What the cells of lines are sorted by, and into. */
interface Sorting<T extends RecordRows> {
  readonly file: string;
  readonly replace: boolean;
  readonly shared: SharedCells;
  readonly say: Say;
  readonly sorted: {
    readonly placed: PlacedCell<T>[];
    readonly same: PlacedCell<T>[];
    readonly conflicts: Conflict<T>[];
    readonly kept: Kept<T>[];
  };
}

/** Sorts the cells of what the lines for one row come to. */
const sortLine = <T extends RecordRows>(line: Settled<T>, sorting: Sorting<T>): void => {
  const { file, replace, say, sorted } = sorting;
  sorted.kept.push(...line.earlier.flatMap((earlier) => repeats(earlier, line, file)));
  const cells = takenCells(line, sorting);
  if (!cells) return;
  const standing = cells.filter(({ old }) => !isBlank(old));
  const against = standing.filter((cell) => !isSame(cell));
  const fresh = cells.filter(({ old }) => isBlank(old));
  sorted.same.push(...standing.filter(isSame));
  const stands = standingOf(line);
  if (against.length === 0) {
    if (fresh.length > 0) place([...fresh, ...originCell(line, file, false)], line, sorting);
  } else if (!replace) sorted.conflicts.push(...against.map((cell) => ({ ...cell, stands })));
  else if (stands === "later") {
    sorted.kept.push(...against.map((cell) => keptOf(cell, cell.value, line.when ?? line.day)));
    say(line.line, ({ intake }) => intake.place.earlierDay);
  } else replaceCells(line, fresh, against, sorting);
};

/** The cells that a line may fill; undefined where its record has no cell for any of its readings. */
const takenCells = <T extends RecordRows>(
  line: Settled<T>,
  { file, shared, say }: Sorting<T>,
): readonly PlacedCell<T>[] | undefined => {
  const all = cellsOf(line, file);
  const lacking = all.filter(
    (cell) => !hasCell(cell.table, cell.row, cell.column) && !isSame(cell),
  );
  const readings = all.filter(isReading);
  const isLost = readings.length > 0 && readings.every((cell) => lacking.includes(cell));
  if (lacking.length > 0) say(line.line, noCell(lacking, isLost));
  if (isLost) return undefined;
  return all.filter((cell) => {
    if (lacking.includes(cell)) return false;
    const reason = isBlank(cell.old) ? shared.contradicted(cell) : undefined;
    if (reason) say(line.line, (text) => text.intake.place.leftBlank(reason(text)));
    return reason === undefined;
  });
};

/** Writes a line over what stands there, which goes to the history. */
const replaceCells = <T extends RecordRows>(
  line: Settled<T>,
  fresh: readonly PlacedCell<T>[],
  against: readonly PlacedCell<T>[],
  sorting: Sorting<T>,
): void => {
  const { file, shared, say, sorted } = sorting;
  const [why] = against.flatMap((cell) => shared.contradicted(cell) ?? shared.ofOthers(cell) ?? []);
  if (why !== undefined) {
    say(line.line, (text) => text.intake.place.notPlaced(why(text)));
    return;
  }
  const stale = staleOf(line, against, file, say);
  sorted.kept.push(...[...against, ...stale].map(replacedBy));
  place([...fresh, ...against, ...stale, ...originCell(line, file, true)], line, sorting);
};

const place = <T extends RecordRows>(
  cells: readonly PlacedCell<T>[],
  { line }: Settled<T>,
  { say, sorted }: Sorting<T>,
): void => {
  sorted.placed.push(...cells);
  for (const cell of cells) {
    const reason = textUnderFormula(cell);
    if (reason) say(line, reason);
  }
};

/** Whether the record that stands is of an earlier or a later day than a line. */
const standingOf = ({ table, row, day }: Settled<RecordRows>): Conflict<RecordRows>["stands"] => {
  const stored = table.rows[row]?.date;
  if (typeof stored !== "number" || day === undefined || stored === day) return "open";
  return stored > day ? "later" : "earlier";
};
