import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";
import type { Result } from "../quantities/result";
import type { CellWrite } from "../sheets/cells/cell";
import type { ExportMapping } from "../sheets/kept/exportMapping";
import type { Remembered } from "../sheets/kept/remembered";
import {
  HISTORY_TABLE,
  type HistoryRow,
  historyUnwrites,
  historyWrites,
  newHistory,
} from "../sheets/ours/historySheet";
import type { Changes } from "../sheets/plan/changes";
import { filled, refill } from "../sheets/plan/refill";
import type { RecordBook } from "../sheets/recordBook";
import type { RecordTable } from "../sheets/recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../sheets/snapshot";
import type { Constants } from "./constants";
import { historyPlace, historyRows } from "./historyRows";
import type { ArrivalOptions } from "./place/arrival";
import type { PlacedCell, Placement } from "./place/placement";
import { placeReadings } from "./place/placeReadings";
import { withSharing } from "./place/sharedCells";
import { fingerprintOf, withMapping } from "./table/exportMappings";
import type { ExportOptions } from "./table/exportOptions";
import type { ExportTable } from "./table/exportTable";
import { type ReadExport, readRemembered } from "./table/readRemembered";
import { decode, type Encoding } from "./text/decode";
import { type Knowledge, knowledgeOf } from "./understand/knowledge";
import { historyWithout, rememberIntake, withIntake } from "./undo";
import { joinedWords, type Synonyms } from "./words/synonyms";

type Cell = PlacedCell<RecordTable>;

/** A file or a pasted block, and the name it goes by. */
export interface ExportSource {
  readonly name: string;
  readonly content: Uint8Array | string;
  /** SHA-256 of a file's bytes, in hexadecimal, which the workbook notes. */
  readonly sha256?: string;
}

/** What the user has answered about exports; the rest is found by inspection, or as it is remembered. */
export interface IntakeAnswers
  extends Pick<ExportOptions, "decimal" | "dateOrder" | "delimiter" | "shape" | "titles"> {
  readonly encoding?: Encoding;
  /** Fields by title. */
  readonly columns?: Readonly<Record<string, string>>;
  /** What a text of the export means here, by field. */
  readonly means?: ArrivalOptions["means"];
  /** What holds for every line that does not say it itself, as `readConstants` reads it. */
  readonly constants?: Constants;
  /** Words that titles use, beside those that the workbook remembers. */
  readonly words?: Synonyms;
  /** Whether readings take the place of what the workbook holds, which then goes to the history. */
  readonly replace: boolean;
  /** The name under which the answers are kept for files with the same titles; blank where they are not. */
  readonly rememberAs?: string;
}

export const NO_ANSWERS: IntakeAnswers = { replace: false };

/** One export with what becomes of it. */
export interface TakenExport<Source extends ExportSource = ExportSource> {
  readonly source: Source;
  readonly table: ExportTable;
  readonly placement: Placement<RecordTable>;
  /** The mapping that was remembered for files with its titles. */
  readonly mapping?: ExportMapping;
}

/** What taking exports in comes to. Nothing is written yet. */
export interface Intake<Source extends ExportSource = ExportSource> {
  readonly ok: true;
  readonly taken: readonly TakenExport<Source>[];
  /** Cells to write, of all exports. */
  readonly cells: readonly Cell[];
  /** The entries of the history that are new. */
  readonly history: readonly HistoryRow[];
  /** History and memory: to be written before the first of the cells, so that nothing is lost. */
  readonly before: Changes & { readonly remembered: Remembered };
  /** What the workbook remembers besides this intake. */
  readonly besides: Remembered;
  /** Serial day. */
  readonly today: number;
}

/** The export that cannot be read, and why. */
export interface UnreadExport<Source extends ExportSource = ExportSource> {
  readonly ok: false;
  readonly source: Source;
  readonly reason: Said<Told>;
}

/**
 * Takes exports into a workbook, one after the other: reads each, places its readings, and says what is
 * to be written and what the workbook is to remember. The workbook stays as it is.
 *
 * @param today serial day, for the history and for what is remembered
 * @example takeIn(book, [{ name: "crm.csv", content: text }], NO_ANSWERS, today)
 */
export const takeIn = <Source extends ExportSource>(
  book: RecordBook,
  sources: readonly Source[],
  answers: IntakeAnswers,
  today: number,
): Intake<Source> | UnreadExport<Source> => {
  const words = answers.words
    ? joinedWords(answers.words, book.remembered.words)
    : book.remembered.words;
  const noted = notedWith(book.remembered.noted, sources);
  let besides: Remembered = {
    ...book.remembered,
    ...(words && { words }),
    ...(noted && { noted }),
  };
  const { replace } = answers;
  const knows = knowledgeOf(book.tables, placingIn(book));
  let { tables } = book;
  const taken: TakenExport<Source>[] = [];
  for (const source of sources) {
    const last = taken.at(-1);
    if (last) tables = tables.map((table) => withPlaced(table, last.placement.placed));
    const read = readSource(source, answers, besides, knows);
    if (!read.ok) return { ok: false, source, reason: read.say };
    const { table, mapping } = read.value;
    const means = { ...mapping?.means, ...answers.means };
    const placement = placeReadings(table, tables, { ...placingIn(book), replace, means });
    besides = { ...besides, mappings: mappingsAfter(besides.mappings, read.value, answers) };
    taken.push({ source, table, placement, mapping });
  }
  const cells = taken.flatMap(({ placement }) => placement.placed);
  const kept = taken.flatMap(({ placement }) => placement.kept);
  const historyTable = historyOf(book.snapshot);
  const history = historyWrites(historyRows(kept, today), historyTable);
  const names = sources.map(({ name }) => name);
  const last = rememberIntake(cells, [...history.rows], names, today);
  return {
    ok: true,
    taken,
    cells,
    history: history.rows,
    before: {
      change: historyTable ? [{ table: historyTable, ...history }] : [],
      create: historyTable || history.rows.length === 0 ? [] : [newHistory(history)],
      remembered: withIntake(besides, last, book.tables),
    },
    besides,
    today,
  };
};

/** The SHA-256 of each export that was brought in; of one that comes again, that of the last time. */
const notedWith = (
  before: Remembered["noted"],
  sources: readonly ExportSource[],
): Remembered["noted"] => {
  const now = sources.flatMap(({ name, sha256 }) => (sha256 === undefined ? [] : [[name, sha256]]));
  return now.length === 0 ? before : { ...before, ...Object.fromEntries(now) };
};

/** What is to be put right once some cells turned out to be held back. */
export interface HeldBack {
  /** Entries to take out of the history again. */
  readonly gone: readonly HistoryRow[];
  readonly remembered: Remembered;
}

/** The history and the memory of an intake of which only some cells were written. */
export const withoutHeldBack = (
  book: RecordBook,
  { history, besides, taken, today }: Intake,
  written: readonly Cell[],
  heldBack: readonly Cell[],
): HeldBack => {
  const stay = written.length > 0 ? historyWithout([...history], placesOf(heldBack)) : [];
  const names = taken.map(({ source }) => source.name);
  return {
    gone: history.filter((entry) => !stay.includes(entry)),
    remembered: withIntake(besides, rememberIntake(written, stay, names, today), book.tables),
  };
};

/** The cells of records as the history names them. */
export const placesOf = (cells: readonly Cell[]) =>
  cells.map(({ table, row, column }) => historyPlace(table, row, column));

/** The change of the history's table that takes entries out of it. */
export const historyRemoval = (
  snapshot: Snapshot,
  entries: readonly HistoryRow[],
): { table: TableSnapshot; added: number; writes: readonly CellWrite[] }[] => {
  const table = historyOf(snapshot);
  return table ? [{ table, added: 0, writes: historyUnwrites(entries, table) }] : [];
};

/** Cells with the results that follow from them, for a writer whose formulas do not calculate. */
export const withResults = ({ tables, lineup }: RecordBook, cells: readonly Cell[]) =>
  lineup
    ? tables.map((table) => ({
        table: table.table,
        writes: refill(
          table,
          cells.filter((cell) => cell.table.table.name === table.table.name),
          lineup,
        ),
      }))
    : [];

const historyOf = (snapshot: Snapshot) =>
  tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);

const placingIn = ({ lineup, instruments }: RecordBook) => ({
  instruments: [...(instruments?.values() ?? [])],
  wave: lineup?.withstand.wave,
  panels: lineup?.panels,
});

const withPlaced = (table: RecordTable, placed: readonly Cell[]): RecordTable => ({
  ...table,
  rows: filled(table.rows, withSharing(placed.filter((cell) => cell.table.table === table.table))),
});

const readSource = (
  { name, content }: ExportSource,
  { columns, decimal, dateOrder, delimiter, shape, titles, encoding, constants }: IntakeAnswers,
  { mappings, words }: Remembered,
  knows: Knowledge,
): Result<ReadExport, Told> => {
  const options = {
    ...{ name, mapping: columns, decimal, dateOrder, delimiter, shape, titles, constants },
    ...{ synonyms: words, knows },
  };
  if (typeof content === "string") return readRemembered(content, options, mappings);
  const decoded = decode(content, encoding);
  return decoded.ok
    ? readRemembered(decoded.value.text, { ...options, encoding: decoded.value.encoding }, mappings)
    : decoded;
};

/** The mappings with what was answered, on top of the mapping that the export was read by. */
const mappingsAfter = (
  mappings: Remembered["mappings"],
  { table, mapping }: ReadExport,
  { rememberAs = "", columns, means, decimal, dateOrder, shape }: IntakeAnswers,
): Remembered["mappings"] =>
  rememberAs.trim() === ""
    ? mappings
    : withMapping(mappings, {
        name: rememberAs.trim(),
        fingerprint: fingerprintOf(table),
        columns: { ...mapping?.columns, ...columns },
        decimal: decimal ?? mapping?.decimal,
        dateOrder: dateOrder ?? mapping?.dateOrder,
        shape: shape ?? mapping?.shape,
        means: { ...mapping?.means, ...means },
      });
