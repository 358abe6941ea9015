import type { Lineup } from "../../lineup/lineup";
import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { KINDS } from "../../records/kinds";
import { rowsOf } from "../../records/rowsOf";
import { recordTables } from "../../sheets/recordTable";
import type { SheetCells, SheetSnapshot, Snapshot } from "../../sheets/snapshot";
import type { ArrivalOptions, Say } from "../place/arrival";
import { arrivalsByRow } from "../place/arrivals";
import { agree, type Repeated } from "../place/resolveRepeats";
import type { RecordRows } from "../rows/recordRows";
import { inSheet } from "../table/evidence";
import type { ExportOptions, Guess } from "../table/exportOptions";
import type { ExportTable } from "../table/exportTable";
import { readRows } from "../table/readRows";
import type { TextRow } from "../text/delimited";
import { titleKey, titleKeys } from "../words/titleKeys";
import { blockGuesses } from "./blockGuesses";
import { type GuessedMap, guessedMap, lostIn } from "./guessedMap";
import { columnBlocks, type Region, sheetRows } from "./sheetRows";

/**
 * Guesses for every block with titles, on sheets that have no record table of ours, which records it
 * holds: by its titles and units, and by how many of its lines find a row of the lineup.
 *
 * @param say is told of blocks that are left out
 */
export const guessMaps = (
  snapshot: Snapshot,
  lineup: Lineup,
  say: SayUnread = () => {},
  answers: LayoutAnswers = {},
): GuessedMap[] => {
  return sheetsOfOthers(snapshot).flatMap((sheet) =>
    guessOn(sheet, lineup, snapshot.words, say, answers),
  );
};

/** The sheets that have no record table of ours. */
const sheetsOfOthers = (snapshot: Snapshot): SheetSnapshot[] => {
  const ours = new Set(recordTables(snapshot).map(({ table }) => table.sheet));
  return snapshot.sheets.filter(({ name }) => !ours.has(name));
};

/** What the user has answered before blocks are guessed at: by title what a column means, by field what a name means. */
export interface LayoutAnswers {
  readonly columns?: Readonly<Record<string, string>>;
  readonly means?: ArrivalOptions["means"];
}

/** Is told of a block with titles none of whose lines finds a row: its sheet, the first such line, and why. */
export type SayUnread = (sheet: string, line: number, reason: Said<Told>) => void;

const guessOn = (
  { name, cells }: SheetSnapshot,
  lineup: Lineup,
  words: Snapshot["words"],
  say: SayUnread,
  answers: LayoutAnswers,
): GuessedMap[] => {
  if (!cells) return [];
  const tables = KINDS.map((kind) => ({ kind, rows: rowsOf(kind, lineup) }));
  const instruments = instrumentNames(lineup);
  return columnBlocks(cells).flatMap((region) =>
    guessIn({ name, cells, region, tables, instruments, lineup, words, say, answers }),
  );
};

/** A part of a sheet whose blocks are guessed at. */
interface GuessedRegion {
  readonly name: string;
  readonly cells: SheetCells;
  readonly region: Region;
  readonly tables: readonly RecordRows[];
  readonly instruments: Guess["instruments"];
  readonly lineup: Lineup;
  readonly words: Snapshot["words"];
  readonly say: SayUnread;
  readonly answers: LayoutAnswers;
}

const guessIn = (part: GuessedRegion): GuessedMap[] => {
  const { name, cells, region, tables, instruments, lineup, words, say, answers } = part;
  const { columns, means } = answers;
  const readWith = (guess: Guess) =>
    readRegion(cells, region, { name, guess, mapping: columns, synonyms: words });
  const arrivals = (table: ExportTable, sayLine: Say) =>
    arrivalsByRow(table, tables, { panels: lineup.panels, means }, sayLine);
  const held = readWith({ instruments, apart: new Set() });
  if (!held.ok) {
    const line = lineWith(sheetRows(cells, region), columns);
    if (line !== undefined) say(name, line, ({ intake }) => intake.layout.onlyNamed);
    return [];
  }
  const apart = doubledBlocks(
    held.value,
    arrivals(held.value, () => {}),
  );
  const read = apart.size === 0 ? held : readWith({ instruments, apart });
  if (!read.ok) return [];
  const lost = new Map<number, Said<Told>>();
  const found = arrivals(read.value, (line, reason) => {
    if (!lost.has(line)) lost.set(line, reason);
  }).flat();
  const guesses = blockGuesses(read.value, found);
  const known = new Set(guesses.map(({ block }) => block.titles.value));
  for (const [line, reason] of unreadHeads(read.value, known, lost)) say(name, line, reason);
  return guesses.map((guess) => guessedMap(name, region, read.value, guess, lost, means));
};

/** For each line of titles that no kind is found for, the first line below it and why it finds no row. */
const unreadHeads = (
  { inspection }: ExportTable,
  known: ReadonlySet<number>,
  lost: ReadonlyMap<number, Said<Told>>,
) => {
  const heads = [...new Set(inspection.blocks.map(({ titles }) => titles.value))];
  return heads.flatMap((head, index) => {
    const first = known.has(head) ? undefined : lostIn(lost, head, heads[index + 1]);
    return first ? [first] : [];
  });
};

const readRegion = (cells: SheetCells, region: Region, options: ExportOptions) =>
  readRows(() => sheetRows(cells, region), inSheet(), options);

const instrumentNames = ({ instruments }: Lineup): ReadonlySet<string> =>
  new Set(
    instruments.flatMap(({ id, serial }) =>
      [id, serial ?? ""].map((text) => text.trim().toLowerCase()).filter((text) => text !== ""),
    ),
  );

/** The first line with one of the titles that the user has named. */
const lineWith = (
  rows: Iterable<TextRow>,
  columns: LayoutAnswers["columns"] = {},
): number | undefined => {
  const keys = new Set(Object.keys(columns).map(titleKey));
  for (const { line, cells } of rows)
    if (titleKeys(cells).some((one) => one.some((key) => keys.has(key)))) return line;
  return undefined;
};

/**
 * The titles of every block on sheets that have no record table of ours, whether or not its lines find a
 * row; where nothing is recognised, the texts of the lines with a title that the user has named.
 */
export const titlesOn = (
  snapshot: Snapshot,
  columns: Readonly<Record<string, string>>,
): string[][] =>
  sheetsOfOthers(snapshot).flatMap(({ name, cells }) =>
    cells
      ? columnBlocks(cells).flatMap((region) =>
          titlesIn(cells, region, { name, columns, words: snapshot.words }),
        )
      : [],
  );

const titlesIn = (
  cells: SheetCells,
  region: Region,
  {
    name,
    columns,
    words,
  }: { name: string; columns: Readonly<Record<string, string>>; words: Snapshot["words"] },
): string[][] => {
  const guess = { instruments: new Set<string>(), apart: new Set<number>() };
  const read = readRegion(cells, region, { name, guess, mapping: columns, synonyms: words });
  if (read.ok)
    return read.value.inspection.blocks.map((block) => block.columns.map(({ title }) => title));
  const line = lineWith(sheetRows(cells, region), columns);
  return [...sheetRows(cells, region)].flatMap((row) =>
    row.line === line ? [[...row.cells]] : [],
  );
};

/** The titles' lines of blocks in which names held for the cells below bring two lines to one record that say otherwise. */
const doubledBlocks = (
  { blocks }: ExportTable,
  found: readonly (readonly Repeated<RecordRows>[])[],
): ReadonlySet<number> => {
  const doubled = found
    .filter((group) => group.length > 1 && !agree(group))
    .flatMap((group) => group.flatMap(({ lines }) => lines));
  return new Set(
    doubled.flatMap((line) => blocks.findLast((block) => block.line < line)?.line ?? []),
  );
};
