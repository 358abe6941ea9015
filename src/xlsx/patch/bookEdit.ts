import type { CellStyle } from "../../look/cellStyle";
import { BookError } from "../../sheets/bookError";
import { type Book, bookOf, type ListedSheet, onePart, worksheetsOf } from "../book";
import { dayStyles, isDayFormat } from "../dayStyles";
import type { Package } from "../package/package";
import {
  addPart,
  dropPart,
  freeName,
  partXml,
  relate,
  relationsNamespace,
  relationsOf,
  unrelate,
} from "../package/relations";
import { NO_DAY, OF_1904, readSheetPart, scanWith, tableOf } from "../readSheet";
import type { ScanWith } from "../scan/scanSheet";
import { type DraftNote, noteFrames, notesXml } from "../write/notesXml";
import type { SheetDraft } from "../write/sheetDraft";
import { printTitles, sheetXml } from "../write/sheetXml";
import { tableXml } from "../write/tableXml";
import { appendTo, attributeText, edited, elementText } from "../xml/editText";
import { childOf, childrenOf, readXml } from "../xml/readXml";
import { moveOthers, withRows } from "./insertRows";
import { placeChild } from "./placeChild";
import { SheetEdit } from "./sheetEdit";
import { openStyles, type Styles } from "./styles";
import { openTexts, type Texts } from "./texts";

const SHEETML = "application/vnd.openxmlformats-officedocument.spreadsheetml";

const FRAMES = "application/vnd.openxmlformats-officedocument.vmlDrawing";

/** Parts that belong to the one sheet that is related to them. */
const OF_ONE_SHEET = new Set([
  "table",
  "comments",
  "threadedComment",
  "vmlDrawing",
  "drawing",
  "printerSettings",
]);

/** A workbook being changed. Nothing is written into its package before `save`, save for new parts. */
export class BookEdit {
  readonly styles: Styles;
  readonly texts: Texts;
  private readonly given: ScanWith;
  private readonly sheets = new Map<string, SheetEdit>();
  private readonly isDay: (style: number) => boolean;
  private formulasChanged = false;
  private tablesThere: { last: number; names: Set<string> } | undefined;

  constructor(private book: Book) {
    this.given = scanWith(book);
    this.styles = openStyles(book);
    this.texts = openTexts(book, this.given.texts);
    this.isDay = book.from1904 ? dayStyles(book) : () => false;
  }

  get pack(): Package {
    return this.book.pack;
  }

  get bookPart(): string {
    return this.book.part;
  }

  /** Whether its days are counted from 1904. */
  get from1904(): boolean {
    return this.book.from1904;
  }

  /** The part of the styles, or its name where there is none yet. */
  get stylesPart(): string {
    return this.styles.part;
  }

  get worksheets(): readonly ListedSheet[] {
    return worksheetsOf(this.book);
  }

  /** A sheet of cells to be changed; undefined where the workbook has none of that name. */
  sheet(name: string): SheetEdit | undefined {
    const known = this.sheets.get(name);
    if (known) return known;
    const listed = this.worksheets.find((sheet) => sheet.name === name);
    if (!listed) return undefined;
    const edit = new SheetEdit(
      listed.part,
      readSheetPart(this.book, listed, this.given),
      this.texts.find,
    );
    this.sheets.set(name, edit);
    return edit;
  }

  /** The same by its part. */
  sheetAt(part: string): SheetEdit | undefined {
    const listed = this.worksheets.find((sheet) => sheet.part === part);
    return listed && this.sheet(listed.name);
  }

  /** A number for a cell of a style, as a workbook that counts from 1904 keeps days. */
  stored(value: number, style: number): number {
    return this.isDay(style) ? as1904(value) : value;
  }

  private draftNumber = (value: number, style: CellStyle | undefined): number =>
    this.book.from1904 && isDayFormat(style?.numFmt ?? "") ? as1904(value) : value;

  /**
   * Adds a sheet behind the others.
   *
   * @throws {BookError} where one has its name already
   */
  addSheet(draft: SheetDraft): void {
    const taken = this.book.sheets.some(
      ({ name }) => name.toLowerCase() === draft.name.toLowerCase(),
    );
    if (taken)
      throw new BookError(({ book }) => book.sheetTaken(draft.name, draft.tables[0]?.name ?? ""));
    for (const { name } of draft.tables)
      if (this.tables.names.has(name.toLowerCase()))
        throw new BookError(({ book }) => book.tableTaken(name));
    const folder = this.bookPart.slice(0, this.bookPart.lastIndexOf("/") + 1);
    const part = freeName(this.pack, `${folder}worksheets/sheet#.xml`);
    this.writeSheet(part, draft);
    this.list(draft, relate(this.pack, this.bookPart, "worksheet", part));
    this.book = bookOf(this.pack, this.bookPart);
  }

  /** Writes the part of a new sheet, with its tables. */
  private writeSheet(part: string, draft: SheetDraft): void {
    const folder = this.bookPart.slice(0, this.bookPart.lastIndexOf("/") + 1);
    const tables = draft.tables.map((table) => {
      const tablePart = freeName(this.pack, `${folder}tables/table#.xml`);
      this.tables.last += 1;
      addPart(this.pack, tablePart, `${SHEETML}.table+xml`, tableXml(table, this.tables.last));
      return relate(this.pack, part, "table", tablePart);
    });
    const pieces = sheetXml(
      draft,
      { tables, frames: this.addNotes(part, draft.notes ?? []) },
      { styles: this.styles, texts: this.texts, stored: this.draftNumber },
    );
    addPart(this.pack, part, `${SHEETML}.worksheet+xml`, pieces);
  }

  /** Adds the notes of a sheet; gives the id of the relationship to their frames. */
  private addNotes(part: string, notes: readonly DraftNote[]): string | undefined {
    if (notes.length === 0) return undefined;
    const { pack } = this;
    const folder = this.bookPart.slice(0, this.bookPart.lastIndexOf("/") + 1);
    const comments = freeName(pack, `${folder}comments#.xml`);
    const frames = freeName(pack, `${folder}drawings/vmlDrawing#.vml`);
    addPart(pack, comments, `${SHEETML}.comments+xml`, notesXml(notes));
    addPart(pack, frames, FRAMES, noteFrames(notes));
    relate(pack, part, "comments", comments);
    return relate(pack, part, "vmlDrawing", frames);
  }

  /**
   * Puts a sheet in the place of the one of its name, or adds it.
   *
   * @throws {BookError} where that sheet has no table of the same name, and is thus somebody's own
   */
  renewSheet(draft: SheetDraft): void {
    const there = this.book.sheets.find(
      ({ name }) => name.toLowerCase() === draft.name.toLowerCase(),
    );
    const related = there ? relationsOf(this.pack, there.part) : [];
    const isOurs = related.some(
      ({ type, part }) =>
        type === "table" && tableOf(partXml(this.pack, part), part).name === draft.tables[0]?.name,
    );
    if (!there || !isOurs) {
      this.addSheet(draft);
      return;
    }
    for (const { type, part } of related) if (OF_ONE_SHEET.has(type)) dropPart(this.pack, part);
    unrelate(this.pack, there.part, () => true);
    this.sheets.delete(there.name);
    this.writeSheet(there.part, draft);
  }

  /**
   * Puts empty rows into a sheet: what stands below moves down, and all that refers to it with it. A
   * `SheetEdit` of before is not to be used any more.
   */
  insertRows(sheet: string, at: number, count: number): void {
    this.putSheets();
    this.sheets.clear();
    const insertion = { sheet, at, count };
    const read = (listed: ListedSheet) => readSheetPart(this.book, listed, this.given);
    for (const listed of this.worksheets.filter(({ name }) => name === sheet)) {
      this.pack.put(listed.part, withRows(read(listed), insertion));
      const others = this.worksheets
        .filter((other) => other !== listed)
        .map((other) => ({ ...other, read: () => read(other) }));
      moveOthers(this.pack, listed.part, others, this.bookPart, insertion);
    }
    this.formulasChanged = true;
  }

  /** Names and numbers of the workbook's tables. */
  private get tables() {
    this.tablesThere ??= this.pack.names
      .filter((name) => /(^|\/)tables\/[^/]+\.xml$/i.test(name))
      .reduce(
        ({ last, names }, part) => {
          const { attributes } = partXml(this.pack, part);
          names.add((attributes.get("displayName") ?? "").toLowerCase());
          return { last: Math.max(last, Number(attributes.get("id") ?? 0)), names };
        },
        { last: 0, names: new Set<string>() },
      );
    return this.tablesThere;
  }

  /** Lists a new sheet in the workbook part, with the names that it prints by. */
  private list({ name, page }: SheetDraft, id: string): void {
    const xml = this.pack.text(this.bookPart);
    const root = readXml(xml);
    const sheets = childOf(root, "sheets");
    if (!sheets) throw new BookError(({ book }) => book.noSheetList);
    const p = root.prefix;
    const numbers = childrenOf(sheets, "sheet").map(({ attributes }) =>
      Number(attributes.get("sheetId")),
    );
    const number = Math.max(0, ...numbers) + 1;
    const listed = `<${p}sheet name="${attributeText(name)}" sheetId="${number}" r:id="${id}" xmlns:r="${relationsNamespace(this.pack)}"/>`;
    const edits = [appendTo(xml, sheets, listed)];
    if (page) {
      const defined = `<${p}definedName name="_xlnm.Print_Titles" localSheetId="${numbers.length}">${elementText(printTitles(name, page))}</${p}definedName>`;
      const names = childOf(root, "definedNames");
      edits.push(
        names
          ? appendTo(xml, names, defined)
          : placeChild(
              xml,
              root,
              "definedNames",
              `<${p}definedNames>${defined}</${p}definedNames>`,
            ),
      );
    }
    this.pack.put(this.bookPart, edited(xml, edits));
  }

  private putSheets(): void {
    for (const edit of this.sheets.values()) {
      if (!edit.isChanged) continue;
      this.pack.put(edit.part, edit.bytes());
      this.formulasChanged ||= edit.formulasChanged;
    }
  }

  /** The file as it then is. */
  save(): Uint8Array {
    this.putSheets();
    this.styles.save();
    this.texts.save();
    if (this.formulasChanged) this.dropChain();
    return this.pack.save();
  }

  /** The order in which a spreadsheet computed last: it makes it anew, and complains of one that names other cells. */
  private dropChain(): void {
    const chain = onePart(this.book, "calcChain");
    if (chain === undefined) return;
    unrelate(this.pack, this.bookPart, ({ type }) => type === "calcChain");
    dropPart(this.pack, chain);
  }
}

/** A day of the 1900 system as one of 1904; what is no day stays. */
const as1904 = (value: number): number => (value >= NO_DAY + OF_1904 ? value - OF_1904 : value);
