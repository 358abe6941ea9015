import { basename } from "node:path";
import { historyRows } from "../intake/historyRows";
import { mappedTables } from "../intake/ownLayout/mappedTables";
import type { ArrivalOptions } from "../intake/place/arrivalOptions";
import type { Kept, PlacedCell, Placement } from "../intake/place/placement";
import { placeReadings } from "../intake/place/placeReadings";
import { withSharing } from "../intake/place/sharedCells";
import { decode, type Encoding } from "../intake/table/decode";
import { fingerprintOf, withMapping } from "../intake/table/exportMappings";
import type { ExportOptions, ExportTable, Shape } from "../intake/table/readExport";
import { type Known, readKnown } from "../intake/table/readRemembered";
import { rememberIntake, undoIntake, withIntake, withoutIntake } from "../intake/undo";
import { type DateOrder, serialDay } from "../quantities/dates";
import { howMany } from "../quantities/howMany";
import type { CellValue } from "../records/kind";
import type { ExportMapping } from "../sheets/exportMapping";
import {
  HISTORY_TABLE,
  historyUnwrites,
  historyWrites,
  newHistory,
} from "../sheets/ours/historySheet";
import { instrumentsOf } from "../sheets/ours/instrumentSheet";
import { lineupOfSheets } from "../sheets/ours/lineupOfSheets";
import { type RecordTable, recordTables } from "../sheets/recordTable";
import { filled, refill } from "../sheets/refill";
import { NOTHING_REMEMBERED } from "../sheets/remembered";
import { type Snapshot, tablesOf } from "../sheets/snapshot";
import { readRemembered } from "../xlsx/correctPackage";
import { writeCells } from "../xlsx/file";
import { byReason } from "./byReason";
import { today } from "./checkCommand";
import { named, readBytes, UsageError } from "./files";
import { readColumns, readMeans, withWords } from "./meanings";
import { type BookOptions, openBookAs } from "./openBookAs";
import { refuseLoss } from "./refuseLoss";
import { saveBook } from "./saveBook";

type Placed = Placement<RecordTable>;

/** One export with what became of it. */
export interface Taken {
  readonly file: string;
  readonly table: ExportTable;
  readonly placement: Placed;
  /** The mapping that was remembered for files of this shape. */
  readonly mapping?: string;
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

/** Reads an export as it is said to be; what is not said, as a remembered mapping has it. */
function readFile(
  file: string,
  said: Omit<ExportOptions, "name">,
  encoding: Encoding | undefined,
  mappings: readonly ExportMapping[],
): Known {
  const decoded = decode(readBytes(file), encoding);
  if (!decoded.ok) throw new UsageError(`${file}: ${decoded.reason}`);
  const options = { ...said, name: basename(file), encoding: decoded.value.encoding };
  const read = readKnown(decoded.value.text, options, mappings);
  if (!read.ok) throw new UsageError(`${file}: ${read.reason}`);
  return read.value;
}

/** What is needed of a workbook to bring readings into it. */
async function openForIntake(book: string, said: BookOptions = {}) {
  const { bytes, snapshot } = await openBookAs(book, said);
  const lineup = snapshot.lineup ?? lineupOfSheets(snapshot);
  const tables = [
    ...recordTables(snapshot),
    ...(lineup ? mappedTables(snapshot, lineup).tables : []),
  ];
  if (tables.length === 0 || !lineup)
    throw new UsageError(
      `${book}: has no record tables to place readings in; build them first (gearproof lineup LINEUP.json -o ${book})`,
    );
  return {
    bytes,
    snapshot,
    lineup,
    tables,
    remembered: {
      ...(readRemembered(bytes) ?? NOTHING_REMEMBERED),
      maps: snapshot.maps ?? [],
    },
  };
}

const historyOf = (snapshot: Snapshot) =>
  tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);

/** Places the readings of exports into a workbook and writes it anew; the input stays as it is. */
export async function takeIn(
  book: string,
  exports: readonly string[],
  out: string,
  options: IntakeOptions,
): Promise<Taken[]> {
  const { replace, decimal, dateOrder, delimiter, shape, remember } = options;
  const mapping = options.columns === undefined ? undefined : readColumns(options.columns);
  const means = options.means === undefined ? undefined : readMeans(options.means);
  const {
    bytes,
    snapshot,
    lineup,
    tables: originals,
    remembered,
  } = await openForIntake(book, options);
  const words = withWords(remembered.words, options.synonyms);
  const instruments = [...(instrumentsOf(snapshot)?.values() ?? [])];
  let tables: readonly RecordTable[] = originals;
  let mappings = remembered.mappings;
  const cells: PlacedCell<RecordTable>[] = [];
  const kept: Kept<RecordTable>[] = [];
  const taken = exports.map((file): Taken => {
    const read = readFile(
      file,
      {
        mapping,
        decimal: decimal && MARKS[decimal],
        dateOrder,
        delimiter: delimiter && DELIMITER_WORDS[delimiter],
        shape,
        synonyms: words,
      },
      options.encoding,
      mappings,
    );
    const meant = { ...read.mapping?.means, ...means } as ArrivalOptions["means"];
    const placement = placeReadings(read.table, tables, {
      replace,
      instruments,
      wave: lineup.withstand.wave,
      panels: lineup.panels,
      means: meant,
    });
    if (remember !== undefined)
      mappings = withMapping(mappings, {
        name: remember,
        fingerprint: fingerprintOf(read.table),
        columns: { ...read.mapping?.columns, ...mapping },
        decimal: (decimal && MARKS[decimal]) ?? read.mapping?.decimal,
        dateOrder: dateOrder ?? read.mapping?.dateOrder,
        shape: shape ?? read.mapping?.shape,
        means: meant as ExportMapping["means"],
      });
    for (const one of placement.placed) cells.push(one);
    for (const one of placement.kept) kept.push(one);
    tables = tables.map((table) => ({
      ...table,
      rows: filled(
        table.rows,
        withSharing(placement.placed.filter((cell) => cell.table.table === table.table)),
      ),
    }));
    return { file, table: read.table, placement, mapping: read.mapping?.name };
  });
  if (
    taken.every(
      ({ placement: { placed, same, kept } }) => placed.length + same.length + kept.length === 0,
    )
  )
    throw new UsageError(
      `${taken.map(takenWords).join("\n")}\nNothing could be placed, so ${out} was not written.`,
    );
  const day = today();
  const table = historyOf(snapshot);
  const history = historyWrites(historyRows(kept, day), table);
  const changes = [
    ...changesOf(originals, cells, lineup),
    ...(table ? [{ table, ...history }] : []),
  ];
  const create = table || history.rows.length === 0 ? [] : [newHistory(history)];
  const files = exports.map((file) => basename(file));
  await refuseLoss(book, bytes, options.acceptLoss);
  saveBook(
    out,
    await named(book, () =>
      writeCells(bytes, changes, {
        create,
        remembered: withIntake(
          { ...remembered, mappings, ...(words && { words }) },
          rememberIntake(cells, [...history.rows], files, day),
          originals,
        ),
      }),
    ),
  );
  return taken;
}

const changesOf = (
  tables: readonly RecordTable[],
  cells: readonly PlacedCell<RecordTable>[],
  lineup: Parameters<typeof refill>[2],
) =>
  tables.map((table) => ({
    table: table.table,
    writes: refill(
      table,
      cells.filter((cell) => cell.table.table.name === table.table.name),
      lineup,
    ),
  }));

/** Takes the last intake back and writes the workbook anew; gives in words what came of it. */
export async function takeBack(
  book: string,
  out: string,
  said: BookOptions & Pick<IntakeOptions, "acceptLoss"> = {},
): Promise<string> {
  const { bytes, snapshot, lineup, tables, remembered } = await openForIntake(book, said);
  const { last } = remembered;
  if (!last)
    throw new UsageError(
      `${book}: remembers no intake that could be taken back; only the last two can, each once`,
    );
  await refuseLoss(book, bytes, said.acceptLoss);
  const { cells, refused, history: entries } = undoIntake(last, tables);
  const history = historyOf(snapshot);
  const changes = [
    ...changesOf(tables, cells, lineup),
    ...(history ? [{ table: history, writes: historyUnwrites(entries, history) }] : []),
  ];
  saveBook(
    out,
    await named(book, () => writeCells(bytes, changes, { remembered: withoutIntake(remembered) })),
  );
  return [
    `Took back the intake of ${serialDay(last.on)} (${last.files.join(", ")}): ${howMany(cells.length, "cell")} as they were before.`,
    ...(refused.length > 0 ? ["  Changed since, and left as they are:"] : []),
    ...refused.map(({ reason }) => `    ${reason}`),
  ].join("\n");
}

/** What became of an export, in lines for people. */
export function takenWords({ file, table, placement, mapping }: Taken): string {
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
    ...(mapping === undefined ? [] : [`  Read by the mapping "${mapping}" of this workbook`]),
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
