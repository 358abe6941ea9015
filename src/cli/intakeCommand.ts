import { basename } from "node:path";
import { openBook } from "../intake/openBook";
import type { PlacedCell } from "../intake/place/placement";
import type { Encoding } from "../intake/table/decode";
import type { Shape } from "../intake/table/exportOptions";
import { takeBack } from "../intake/takeBack";
import {
  type ExportSource,
  historyRemoval,
  type TakenExport,
  takeIn,
  withResults,
} from "../intake/takeIn";
import { type DateOrder, serialDay } from "../quantities/dates";
import { howMany } from "../quantities/howMany";
import type { CellValue } from "../records/kind";
import type { RecordTable } from "../sheets/recordTable";
import { writeCells } from "../xlsx/file";
import { byReason } from "./byReason";
import { today } from "./checkCommand";
import { named, readBytes, UsageError } from "./files";
import { readColumns, readMeans, readWords } from "./meanings";
import { type BookOptions, openBookAs } from "./openBookAs";
import { refuseLoss } from "./refuseLoss";
import { saveBook } from "./saveBook";

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
  /** A name under which what is said here is kept for files of this shape. */
  readonly remember?: string;
  /** A map file: how blocks in somebody's own layout are read as records. */
  readonly map?: string;
  /** A lineup file, for a workbook that does not tell its lineup. */
  readonly lineup?: string;
  /** Whether the written workbook may lack what saving loses. */
  readonly acceptLoss?: boolean;
}

/** The bytes of a workbook, and what they hold as records. */
async function openForIntake(book: string, said: BookOptions = {}) {
  const { bytes, snapshot } = await openBookAs(book, said);
  const records = openBook(snapshot);
  if (records.tables.length === 0 || !records.lineup)
    throw new UsageError(
      `${book}: has no record tables to place readings in; build them first (gearproof lineup LINEUP.json -o ${book})`,
    );
  return { bytes, records };
}

/** Places the readings of exports into a workbook and writes it anew; the input stays as it is. */
export async function intakeBook(
  book: string,
  exports: readonly string[],
  out: string,
  options: IntakeOptions,
): Promise<readonly TakenExport<ExportFile>[]> {
  const { columns, means, synonyms, decimal, delimiter, remember, ...answers } = options;
  const answered = {
    ...answers,
    columns: columns === undefined ? undefined : readColumns(columns),
    means: means === undefined ? undefined : readMeans(means),
    words: synonyms === undefined ? undefined : readWords(synonyms),
    decimal: decimal && MARKS[decimal],
    delimiter: delimiter && DELIMITER_WORDS[delimiter],
    rememberAs: remember,
  };
  const { bytes, records } = await openForIntake(book, options);
  const files = exports.map(
    (file): ExportFile => ({ file, name: basename(file), content: readBytes(file) }),
  );
  const intake = takeIn(records, files, answered, today());
  if (!intake.ok) throw new UsageError(`${intake.source.file}: ${intake.reason}`);
  const { taken, cells, before } = intake;
  if (taken.every(({ placement: { placed, same, kept } }) => [placed, same, kept].every(isEmpty)))
    throw new UsageError(
      `${taken.map(takenWords).join("\n")}\nNothing could be placed, so ${out} was not written.`,
    );
  await refuseLoss(book, bytes, options.acceptLoss);
  const changes = [...withResults(records, cells), ...(before.change ?? [])];
  saveBook(out, await named(book, () => writeCells(bytes, changes, before)));
  return taken;
}

const isEmpty = (list: readonly unknown[]) => list.length === 0;

/** Takes the last intake back and writes the workbook anew; gives in words what came of it. */
export async function undoBook(
  book: string,
  out: string,
  said: BookOptions & Pick<IntakeOptions, "acceptLoss"> = {},
): Promise<string> {
  const { bytes, records } = await openForIntake(book, said);
  const back = takeBack(records);
  if (!back)
    throw new UsageError(
      `${book}: remembers no intake that could be taken back; only the last two can, each once`,
    );
  const { last, cells, refused, history, remembered } = back;
  await refuseLoss(book, bytes, said.acceptLoss);
  const changes = [...withResults(records, cells), ...historyRemoval(records.snapshot, history)];
  saveBook(out, await named(book, () => writeCells(bytes, changes, { remembered })));
  return [
    `Took back the intake of ${serialDay(last.on)} (${last.files.join(", ")}): ${howMany(cells.length, "cell")} as they were before.`,
    ...(refused.length > 0 ? ["  Changed since, and left as they are:"] : []),
    ...refused.map(({ reason }) => `    ${reason}`),
  ].join("\n");
}

/** What became of an export, in lines for people. */
export function takenWords({
  source: { file },
  table,
  placement,
  mapping,
}: TakenExport<ExportFile>): string {
  const { placed, same, conflicts, unplaced, suggested, kept } = placement;
  const { encoding, delimiter, dateOrder, blocks, skipped, skippedCount } = table.inspection;
  const rows = new Set(placed.map((cell) => `${cell.table.table.name}:${cell.row}`)).size;
  const lines = blocks.reduce((sum, block) => sum + block.lines, 0);
  const list = (title: string, items: readonly string[]) =>
    items.length === 0 ? [] : [`  ${title}:`, ...items.map((item) => `    ${item}`)];
  const unsure = [encoding, delimiter, dateOrder].flatMap((seen) =>
    seen && seen.confidence !== "certain" ? [`${seen.evidence} (${seen.confidence})`] : [],
  );
  return [
    `${file}: ${howMany(lines, "line")}; ${howMany(placed.length, "cell")} placed on ${howMany(rows, "row")}, ${same.length} already there, ${conflicts.length} would overwrite, ${unplaced.length} not placed.`,
    `  Decimal mark: ${table.decimal.evidence}`,
    ...(mapping === undefined ? [] : [`  Read by the mapping "${mapping.name}" of this workbook`]),
    ...(blocks.length > 1
      ? list(
          `${blocks.length} tables`,
          blocks.map(
            ({ titles, title, lines, shape }) =>
              `line ${titles.value}: ${title ?? "no title"}, ${howMany(lines, "line")}, ${shape.value}`,
          ),
        )
      : (blocks[0]?.shape.value ?? "long") === "wide"
        ? [`  Shape: ${blocks[0]?.shape.evidence}`]
        : []),
    ...list("Not sure, say otherwise by an option", unsure),
    ...list(`Lines that are no readings (${skippedCount})`, byReason(skipped).slice(0, 20)),
    ...list(
      "Columns not recognised and left out (say what they mean with --columns)",
      table.columns
        .filter(({ field, title }) => field === undefined && title !== "")
        .map(({ title }) => `"${title}"`),
    ),
    ...list(
      "Would overwrite, held back with all else on their lines (take them with --replace)",
      conflicts.map(
        (cell) =>
          `line ${cell.source.line}: ${cell.table.kind.sheet} ${header(cell)}: ${shown(cell, cell.old)} in the workbook${cell.stands === "open" ? "" : `, ${cell.stands}`}, ${shown(cell, cell.value)} in the export`,
      ),
    ),
    ...list(
      "Names that no row has (confirm one with --means)",
      suggested.map(
        ({ field, written, candidates, lines }) =>
          `${field} "${written}" on ${howMany(lines.length, "line")}: ${candidates.map(({ name, score }) => `"${name}" (${score})`).join(", ")}?`,
      ),
    ),
    ...(kept.length > 0
      ? [`  To the sheet Reading history: ${howMany(kept.length, "earlier value")}`]
      : []),
    ...list(
      "Not placed",
      byReason(unplaced.map(({ source, reason }) => ({ line: source.line, reason }))),
    ),
  ].join("\n");
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
