import { basename } from "node:path";
import { sha256 } from "../handover/fingerprint";
import { readConstants, type SaidConstants } from "../intake/constants";
import { openBook } from "../intake/openBook";
import type { PlacedCell } from "../intake/place/placement";
import type { Shape } from "../intake/table/exportOptions";
import { takeBack } from "../intake/takeBack";
import {
  type ExportSource,
  historyRemoval,
  type TakenExport,
  takeIn,
  withResults,
} from "../intake/takeIn";
import type { Encoding } from "../intake/text/decode";
import type { CommandLineText } from "../messages/commandLine";
import type { Told } from "../messages/told";
import { type DateOrder, serialDay } from "../quantities/dates";
import { today } from "../quantities/today";
import type { CellValue } from "../records/kind";
import type { RecordTable } from "../sheets/recordTable";
import { writeCells } from "../xlsx/file";
import { readColumns, readMeans, readWords } from "./ask/meanings";
import { named, readBytes, UsageError } from "./files/files";
import { saveBook } from "./files/saveBook";
import { type BookOptions, openBookAs } from "./openBookAs";
import { byReason } from "./screen/byReason";

/** A file as it was given. */
interface ExportFile extends ExportSource {
  readonly file: string;
}

const MARKS = { point: ".", comma: "," } as const;
export const DELIMITER_WORDS = { comma: ",", semicolon: ";", tab: "\t", bar: "|" } as const;

export interface IntakeOptions {
  readonly replace: boolean;
  readonly decimal?: keyof typeof MARKS;
  readonly dateOrder?: DateOrder;
  readonly encoding?: Encoding;
  readonly delimiter?: keyof typeof DELIMITER_WORDS;
  readonly shape?: Shape;
  /** `Title=field, …`, or a JSON file: an object of column title and field. */
  readonly columns?: string;
  /** `field: text=name, …; …`, or a JSON file: by field, an object of a text of the export and what it means here. */
  readonly means?: string;
  /** A JSON file: an object of field and list of words. */
  readonly synonyms?: string;
  /** What holds for every line that does not say it itself, by field. */
  readonly set?: SaidConstants;
  /** A name under which what is said here is kept for files of this shape. */
  readonly remember?: string;
  /** A map file: how blocks in somebody's own layout are read as records. */
  readonly map?: string;
  /** A lineup file, for a workbook that does not tell its lineup. */
  readonly lineup?: string;
}

/** The bytes of a workbook, and what they hold as records. */
async function openForIntake(book: string, said: BookOptions = {}) {
  const { bytes, snapshot } = await openBookAs(book, said);
  const records = openBook(snapshot);
  if (records.tables.length === 0 || !records.lineup)
    throw new UsageError(({ intake }) => intake.noTables(book));
  return { bytes, records };
}

/** Places the readings of exports into a workbook and writes it anew; the input stays as it is. */
export async function intakeBook(
  book: string,
  exports: readonly string[],
  out: string,
  options: IntakeOptions,
): Promise<readonly TakenExport<ExportFile>[]> {
  const { columns, means, synonyms, decimal, delimiter, remember, set = {}, ...answers } = options;
  const { bytes, records } = await openForIntake(book, options);
  const constants = readConstants(set, records);
  if (!constants.ok) throw new UsageError(({ told }) => `--set ${constants.say(told)}`);
  const answered = {
    ...answers,
    constants: constants.value,
    columns: columns === undefined ? undefined : readColumns(columns),
    means: means === undefined ? undefined : readMeans(means),
    words: synonyms === undefined ? undefined : readWords(synonyms),
    decimal: decimal && MARKS[decimal],
    delimiter: delimiter && DELIMITER_WORDS[delimiter],
    rememberAs: remember,
  };
  const files = await Promise.all(
    exports.map(async (file): Promise<ExportFile> => {
      const content = readBytes(file);
      return { file, name: basename(file), content, sha256: await sha256(content) };
    }),
  );
  const intake = takeIn(records, files, answered, today());
  if (!intake.ok)
    throw new UsageError(({ told }) => `${intake.source.file}: ${intake.reason(told)}`);
  const { taken, cells, before } = intake;
  if (taken.every(({ placement: { placed, same, kept } }) => [placed, same, kept].every(isEmpty)))
    throw new UsageError((text) =>
      [...taken.map((one) => takenWords(one, text)), text.intake.nothingPlaced(out)].join("\n"),
    );
  const changes = [...withResults(records, cells), ...(before.change ?? [])];
  saveBook(out, await named(book, () => writeCells(bytes, changes, before)));
  return taken;
}

const isEmpty = (list: readonly unknown[]) => list.length === 0;

/** Takes the last intake back and writes the workbook anew; gives in words what came of it. */
export async function undoBook(
  book: string,
  out: string,
  { intake: text, told }: CommandLineText,
  said: BookOptions = {},
): Promise<string> {
  const { bytes, records } = await openForIntake(book, said);
  const back = takeBack(records);
  if (!back) throw new UsageError(({ intake }) => intake.nothingToUndo(book));
  const { last, cells, refused, history, remembered } = back;
  const changes = [...withResults(records, cells), ...historyRemoval(records.snapshot, history)];
  saveBook(out, await named(book, () => writeCells(bytes, changes, { remembered })));
  return [
    text.undone(serialDay(last.on), last.files.join(", "), cells.length),
    ...(refused.length > 0 ? [text.changedSince] : []),
    ...refused.map(({ reason }) => `    ${reason(told)}`),
  ].join("\n");
}

type IntakeText = CommandLineText["intake"];
type Taken = TakenExport<ExportFile>;

/** Lines of a list under its title; none where it is empty. */
const listed = (title: string, items: readonly string[]): string[] =>
  items.length === 0 ? [] : [`  ${title}:`, ...items.map((item) => `    ${item}`)];

/** So many reasons for lines without readings are told. */
const MAX_SKIPPED = 20;

/** What became of an export, in lines for people. */
export function takenWords(taken: Taken, { intake: text, told }: CommandLineText): string {
  const { source, table, placement } = taken;
  const { placed, same, conflicts, unplaced, suggested, kept } = placement;
  const { blocks, skipped, skippedCount } = table.inspection;
  const rows = new Set(placed.map((cell) => `${cell.table.table.name}:${cell.row}`)).size;
  const lines = blocks.reduce((sum, block) => sum + block.lines, 0);
  return [
    text.summary(
      source.file,
      lines,
      placed.length,
      rows,
      same.length,
      conflicts.length,
      unplaced.length,
    ),
    ...readingWords(taken, text, told),
    ...listed(text.notReadings(skippedCount), byReason(skipped, told).slice(0, MAX_SKIPPED)),
    ...listed(
      text.unknownColumns,
      table.columns
        .filter(({ field, title, spare }) => field === undefined && title !== "" && !spare)
        .map(({ title }) => `"${title}"`),
    ),
    ...listed(
      text.conflicts,
      conflicts.map((cell) =>
        text.conflict(
          cell.source.line,
          `${cell.table.kind.sheet} ${header(cell)}`,
          shown(cell, cell.old),
          cell.stands === "open" ? undefined : cell.stands,
          shown(cell, cell.value),
        ),
      ),
    ),
    ...listed(
      text.unknownNames,
      suggested.map(({ field, written, candidates, lines }) =>
        text.unknownName(
          field,
          written,
          lines.length,
          candidates.map(({ name, score }) => `"${name}" (${score})`).join(", "),
        ),
      ),
    ),
    ...(kept.length > 0 ? [text.kept(kept.length)] : []),
    ...listed(
      text.notPlaced,
      byReason(
        unplaced.map(({ source, reason }) => ({ line: source.line, reason })),
        told,
      ),
    ),
  ].join("\n");
}

/** How an export was read. */
function readingWords({ table, mapping }: Taken, text: IntakeText, told: Told): string[] {
  const { encoding, delimiter, dateOrder, blocks } = table.inspection;
  const unsure = [encoding, delimiter, dateOrder].flatMap((found) =>
    found && found.confidence !== "certain"
      ? [told.intake.seen.howSure(found.evidence(told), found.confidence)]
      : [],
  );
  const [only] = blocks;
  const isWide = blocks.length === 1 && only?.shape.value === "wide";
  const tables = blocks.map(({ titles, title, lines, shape }) =>
    text.table(titles.value, title, lines, shape.value),
  );
  return [
    text.decimal(table.decimal.evidence(told)),
    ...(mapping === undefined ? [] : [text.mapping(mapping.name)]),
    ...(blocks.length > 1 ? listed(text.tables(blocks.length), tables) : []),
    ...(isWide ? [text.shape(only.shape.evidence(told))] : []),
    ...listed(text.unsure, unsure),
  ];
}

/** A cell as people write it: a day where the column holds days. */
const shown = ({ table, column }: PlacedCell<RecordTable>, value: CellValue) =>
  typeof value === "number" &&
  table.kind.columns.find(({ id }) => id === column)?.accepts?.type === "date"
    ? serialDay(value)
    : String(value);

const header = ({ table, row, column }: PlacedCell<RecordTable>) => {
  const keys = table.kind.columns.filter(({ role }) => role === "key");
  const name = keys.map(({ id }) => table.rows[row]?.[id] ?? "").join(" · ");
  return `${name}, "${table.kind.columns.find(({ id }) => id === column)?.header ?? column}"`;
};
