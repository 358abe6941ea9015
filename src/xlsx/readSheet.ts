import { type Area, readArea } from "../sheets/cells/area";
import { type Book, type ListedSheet, onePart } from "./book";
import { dayStyles } from "./dayStyles";
import { damaged } from "./package/readArchive";
import { partXml, relationsOf } from "./package/relations";
import { readPieces } from "./scan/readPieces";
import { type ScannedSheet, type ScanWith, scanSheet } from "./scan/scanSheet";
import { NO_TEXTS, sharedTexts } from "./scan/sharedTexts";
import type { StoredSheet, StoredTable } from "./storedSheet";
import { unseenStyles } from "./unseenStyles";
import { unescapedCell } from "./xml/editText";
import { childOf, childrenOf, isOn, within, type XmlElement } from "./xml/readXml";
import { cellsPlace, type SheetText, sheetText } from "./xml/sheetText";

/** What the cells of all sheets of a workbook refer to. */
export function scanWith(book: Book): ScanWith {
  const strings = onePart(book, "sharedStrings");
  return {
    texts: strings ? sharedTexts(book.pack.bytes(strings), strings) : NO_TEXTS,
    unseen: unseenStyles(book),
    ...(book.from1904 ? { number: in1900(dayStyles(book)) } : {}),
  };
}

/** 1 January 1904 as a serial day of the 1900 system. */
export const OF_1904 = 1462;
/** 1 January 1914: nothing is dated before it, so that an earlier "day" is a time or a number that only looks like a day. */
export const NO_DAY = 3653;

/** Days of a workbook that counts from 1904 as those of 1900; what is no day stays. */
const in1900 =
  (isDay: (style: number) => boolean) =>
  (value: number, style: number): number =>
    value >= NO_DAY && isDay(style) ? value + OF_1904 : value;

/** A sheet's part: its cells, read when asked for, and what stands before and behind them. */
export interface ReadSheet {
  readonly bytes: Uint8Array;
  readonly scanned: ScannedSheet;
  readonly around: SheetText;
}

export function readSheetPart({ pack }: Book, { part }: ListedSheet, given: ScanWith): ReadSheet {
  const bytes = pack.bytes(part);
  let scanned: ScannedSheet | undefined;
  let around: SheetText | undefined;
  return {
    bytes,
    get scanned() {
      scanned ??= scanSheet(bytes, part, given);
      return scanned;
    },
    get around() {
      around ??= sheetText(bytes, scanned?.places ?? cellsPlace(bytes, part), part);
      return around;
    },
  };
}

/** Reads what is kept of a sheet, as its part is unpacked. */
export async function storedSheet(
  book: Book,
  sheet: ListedSheet,
  given: ScanWith,
): Promise<StoredSheet> {
  const { name, hidden, part } = sheet;
  const { scanned, around } = await readPieces(book.pack.pieces(part), part, given);
  return {
    name,
    hidden,
    cells: scanned.cells,
    formulas: scanned.formulas,
    hiddenRows: scanned.hiddenRows,
    hiddenColumns: hiddenColumns(around.root),
    unseen: scanned.unseen,
    merges: mergesOf(around.root),
    ...relatedTo(book, sheet),
  };
}

const mergesOf = (root: XmlElement): Area[] =>
  childrenOf(childOf(root, "mergeCells"), "mergeCell").flatMap(
    ({ attributes }) => readArea(attributes.get("ref") ?? "") ?? [],
  );

/** A column narrower than this, in digits, is not seen. */
const HAIR = 0.7;

function hiddenColumns(root: XmlElement): [number, number][] {
  return childrenOf(childOf(root, "cols"), "col").flatMap((column) => {
    const { attributes } = column;
    const width = attributes.get("width");
    if (!isOn(column, "hidden") && (width === undefined || Number(width) >= HAIR)) return [];
    return [[Number(attributes.get("min")) - 1, Number(attributes.get("max")) - 1]];
  });
}

/** The tables, notes and threads of a sheet, which stand in parts of their own. */
function relatedTo({ pack }: Book, { part }: ListedSheet) {
  const tables: StoredTable[] = [];
  const notes = new Map<string, string>();
  const threads = new Map<string, string>();
  for (const relation of relationsOf(pack, part)) {
    if (relation.external) continue;
    if (relation.type === "table")
      tables.push(tableOf(partXml(pack, relation.part), relation.part));
    else if (relation.type === "comments") readNotes(partXml(pack, relation.part), notes);
    else if (relation.type === "threadedComment")
      readThreads(partXml(pack, relation.part), threads);
  }
  // Beside a thread stands a note that only says so to older programs.
  for (const [cell, text] of threads) notes.set(cell, text);
  return { tables, notes };
}

/** A table as its part describes it. */
export function tableOf(table: XmlElement, part: string): StoredTable {
  const { attributes } = table;
  const area = readArea(attributes.get("ref") ?? "");
  const name = attributes.get("displayName") ?? attributes.get("name");
  if (!area || name === undefined) throw damaged((told) => told.book.why.nameless(part));
  const headed = attributes.get("headerRowCount") !== "0";
  const totals = Number(attributes.get("totalsRowCount") ?? 0);
  const top = headed ? area.top : area.top - 1;
  return {
    name: unescapedCell(name),
    top,
    left: area.left,
    headers: childrenOf(childOf(table, "tableColumns"), "tableColumn").map(({ attributes }) =>
      unescapedCell(attributes.get("name") ?? ""),
    ),
    rowCount: area.bottom - totals - top,
  };
}

function readNotes(comments: XmlElement, notes: Map<string, string>): void {
  for (const comment of childrenOf(childOf(comments, "commentList"), "comment")) {
    const area = readArea(comment.attributes.get("ref") ?? "");
    if (area) notes.set(`${area.top},${area.left}`, noteText(comment));
  }
}

/** What is said in the threads of a sheet, a line each, in their order. */
function readThreads(root: XmlElement, threads: Map<string, string>): void {
  for (const comment of childrenOf(root, "threadedComment")) {
    const area = readArea(comment.attributes.get("ref") ?? "");
    const text = unescapedCell(childOf(comment, "text")?.text ?? "");
    if (!area || text === "") continue;
    const cell = `${area.top},${area.left}`;
    const before = threads.get(cell);
    threads.set(cell, before === undefined ? text : `${before}\n${text}`);
  }
}

/** The text of a note, of which parts may look otherwise; not how it is spoken. */
const noteText = (comment: XmlElement): string => {
  let text = "";
  for (const element of within(comment)) if (element.name === "t") text += element.text;
  return unescapedCell(text);
};
