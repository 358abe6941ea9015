import { type Area, cellCount, LAST_COLUMN, LAST_ROW, readArea } from "../../sheets/cells/area";
import { beyond, limitOf } from "../../sheets/plan/limits";
import type { Unseen } from "../../sheets/snapshot";
import { unescapedCell } from "../xml/editText";
import { type CellGrid, GridBuilder, type GridMark } from "./grid";
import { NO_KIND, PlainCell, STR } from "./plainCell";
import { readNumber } from "./readNumber";
import { Repeats } from "./repeats";
import type { SharedTexts } from "./sharedTexts";
import { BrokenPart, TagReader } from "./tagReader";
import { plainText, textIn } from "./textIn";

/** The formulas of a sheet as a file writes them. */
export interface StoredFormulas {
  /** By number of a cell's formula in the grid, the text; of a shared one that is written elsewhere its number there. */
  readonly texts: readonly (string | number)[];
  /** Formulas that are filled over several cells, each written once, for the cell where it stands. */
  readonly shared: ReadonlyMap<
    number,
    { readonly formula: string; readonly row: number; readonly column: number }
  >;
  /** Formulas that fill several cells as one. */
  readonly arrays: readonly (Area & { readonly formula: string })[];
}

/** Where the rows of a sheet stand in its part. */
export interface RowPlaces {
  /** Behind the start tag of the cells, and before their end tag; the same where they close themselves. */
  readonly from: number;
  readonly to: number;
  /** Behind the end tag of the cells. */
  readonly end: number;
  /** By row as it is written: its number from 0, where it begins and where it ends. */
  readonly rows: readonly number[];
  readonly begins: readonly number[];
  readonly ends: readonly number[];
}

export interface ScannedSheet {
  readonly cells: CellGrid;
  readonly formulas: StoredFormulas;
  readonly hiddenRows: readonly number[];
  readonly unseen: ReadonlyMap<string, Unseen>;
  readonly places: RowPlaces;
}

/** What a sheet's cells refer to. */
export interface ScanWith {
  readonly texts: SharedTexts;
  /** What a number in a cell of a style is, of a workbook that counts its days from 1904. */
  readonly number?: (value: number, style: number) => number;
  /** By number of a cell style, why a value in it is not seen as it is. */
  readonly unseen?: readonly (Unseen | undefined)[];
}

/**
 * Reads the cells of a sheet in one pass over its bytes.
 *
 * @throws {BookError} where it is damaged, with the part and the place
 */
export function scanSheet(bytes: Uint8Array, part: string, given: ScanWith): ScannedSheet {
  const scanner = new SheetScanner(part, given);
  scanner.read(bytes, true);
  return scanner.scanned();
}

const BLANK = 32;
/** A row lower than this, in points, is not seen. */
const HAIR = 4;
/** A sheet with more values out of sight is one to be looked at as a whole. */
const MOST_UNSEEN = 10_000;
/** Attributes of rows, cells and formulas: place, style, kind. */
const [R, S, T] = ["r", "s", "t"].map((letter) => letter.charCodeAt(0));

const [KIND_NUMBER, KIND_SHARED, KIND_TEXT, KIND_INLINE, KIND_TRUTH, KIND_DAY] = [0, 1, 2, 3, 4, 5];
/** Kinds of a cell by what its `t` says (ECMA-376 part 1, 18.18.11). */
const KINDS: Readonly<Record<string, number>> = {
  n: KIND_NUMBER,
  s: KIND_SHARED,
  str: KIND_TEXT,
  e: KIND_TEXT,
  inlineStr: KIND_INLINE,
  b: KIND_TRUTH,
  d: KIND_DAY,
};

const LETTERS: readonly (number | undefined)[] = Object.entries(KINDS).reduce<number[]>(
  (letters, [name, kind]) => {
    if (name.length === 1) letters[name.charCodeAt(0)] = kind;
    return letters;
  },
  [],
);

const decodeShort = (bytes: Uint8Array, from: number, to: number): string => {
  let text = "";
  for (let at = from; at < Math.min(to, from + 10); at++)
    text += String.fromCharCode(bytes[at] ?? 0);
  return text;
};

/** Where a scanner was after the last row that it read whole. */
interface Mark {
  readonly at: number;
  readonly row: number;
  readonly grid: GridMark;
  readonly hiddenRows: number;
  readonly arrays: number;
}

const NOTHING = new Uint8Array();
const ROW_END = Array.from("row>", (letter) => letter.charCodeAt(0));
const GT = 62;

/** Where the last row ends that is there as a whole, by the looks of it; 0 where there is none. */
function lastRowEnd(bytes: Uint8Array): number {
  for (let at = bytes.lastIndexOf(GT); at >= 3; at = bytes.lastIndexOf(GT, at - 1))
    if (ROW_END.every((byte, index) => bytes[at - 3 + index] === byte)) return at + 1;
  return 0;
}

/** Reads the cells of a sheet from its bytes, whole or as they come. */
export class SheetScanner {
  private bytes: Uint8Array = NOTHING;
  private tags: TagReader;
  private readonly grid = new GridBuilder();
  private readonly codes: Uint32Array;
  private repeatedTexts = new Repeats(NOTHING);
  private repeatedFormulas = new Repeats(NOTHING);
  private plain = new PlainCell(NOTHING, this.repeatedFormulas);
  private readonly formulaTexts: (string | number)[] = [""];
  private readonly formulaNumbers = new Map<string | number, number>();
  private readonly shared = new Map<number, { formula: string; row: number; column: number }>();
  private readonly arrays: (Area & { formula: string })[] = [];
  private readonly hiddenRows: number[] = [];
  private readonly unseen = new Map<string, Unseen>();
  private readonly rows: number[] = [];
  private readonly begins: number[] = [];
  private readonly ends: number[] = [];
  /** Bytes of the part before those that are read now. */
  private before = 0;
  /** Behind the start tag of the cells, once it is read. */
  from = -1;
  /** Before the end tag of the cells and behind it, once it is read. */
  private to = -1;
  private end = -1;
  /** The cell at hand. */
  private row = -1;
  private column = -1;
  private kind = KIND_NUMBER;
  private style = 0;
  private formula = 0;
  private valueFrom = 0;
  private valueTo = 0;
  private hasValue = false;
  private readonly mostCells = limitOf("cells");

  constructor(
    private readonly part: string,
    private readonly given: ScanWith,
  ) {
    this.tags = new TagReader(NOTHING, part);
    this.codes = new Uint32Array(given.texts.count);
  }

  /**
   * Reads on: what stands before the cells, and then rows, as far as there are whole ones, up to the end tag of
   * the cells.
   *
   * @param bytes of the part, from where it was read to before
   * @param isLast whether the part ends with them
   * @returns how many of them were read
   * @throws {BookError} where it is damaged
   */
  read(bytes: Uint8Array, isLast: boolean): number {
    if (this.to >= 0) return 0;
    this.look(bytes);
    const stop = isLast ? 0 : lastRowEnd(bytes);
    let mark = this.mark();
    try {
      if (this.from < 0) this.findCells();
      mark = this.mark();
      while (this.to < 0 && (isLast || this.tags.at < stop) && this.nextRow()) mark = this.mark();
    } catch (error) {
      // What is cut off here may go on in the bytes to come.
      if (isLast || !(error instanceof BrokenPart)) throw error;
      this.backTo(mark);
    }
    this.before += this.tags.at;
    return this.tags.at;
  }

  /** What was read, once the end of the cells was. */
  scanned(): ScannedSheet {
    const { from, to, end, rows, begins, ends } = this;
    return {
      cells: this.grid.grid(),
      formulas: { texts: this.formulaTexts, shared: this.shared, arrays: this.arrays },
      hiddenRows: this.hiddenRows,
      unseen: this.unseen,
      places: { from, to, end, rows, begins, ends },
    };
  }

  private look(bytes: Uint8Array): void {
    this.bytes = bytes;
    this.tags = new TagReader(bytes, this.part);
    this.repeatedTexts = new Repeats(bytes);
    this.repeatedFormulas = new Repeats(bytes);
    this.plain = new PlainCell(bytes, this.repeatedFormulas);
  }

  private mark(): Mark {
    return {
      at: this.tags.at,
      row: this.row,
      grid: this.grid.mark(),
      hiddenRows: this.hiddenRows.length,
      arrays: this.arrays.length,
    };
  }

  private backTo({ at, row, grid, hiddenRows, arrays }: Mark): void {
    this.tags.at = at;
    this.row = row;
    this.grid.backTo(grid);
    this.hiddenRows.length = hiddenRows;
    this.arrays.length = arrays;
  }

  private findCells(): void {
    const { tags } = this;
    tags.enter("worksheet");
    while (tags.nextChild()) {
      if (!tags.isNamed("sheetData")) {
        tags.skipElement();
        continue;
      }
      tags.skipAttributes();
      this.from = this.before + tags.at;
      if (tags.closed) this.to = this.end = this.from;
      return;
    }
    throw tags.broken((is) => is.noCells);
  }

  /** Reads the next row; false at the end tag of the cells, which is then to be read again by whoever wants it. */
  private nextRow(): boolean {
    const { tags } = this;
    if (tags.nextChild()) {
      if (tags.isNamed("row")) this.readRow();
      else this.skipExtension("rows");
      return true;
    }
    this.to = this.before + tags.tag;
    this.end = this.before + tags.at;
    tags.at = tags.tag;
    return false;
  }

  private readRow(): void {
    const { tags } = this;
    const begin = tags.tag;
    this.row += 1;
    if (this.rowAttributes()) this.hiddenRows.push(this.row);
    this.column = -1;
    this.grid.row(this.row);
    if (!tags.closed) this.readCells();
    this.rows.push(this.row);
    this.begins.push(this.before + begin);
    this.ends.push(this.before + tags.at);
  }

  private readCells(): void {
    const { tags } = this;
    for (;;) {
      while (this.plain.read(tags.at) && this.takePlain());
      if (!tags.nextChild()) return;
      if (tags.isNamed("c")) this.readCell();
      else this.skipExtension("cells");
    }
  }

  /** Takes over a cell of the plain form; false where it is of a kind that the other way has to look at. */
  private takePlain(): boolean {
    const { plain } = this;
    const kind =
      plain.kind === NO_KIND ? KIND_NUMBER : plain.kind === STR ? KIND_TEXT : LETTERS[plain.kind];
    if (kind === undefined) return false;
    this.kind = kind;
    this.column = plain.column;
    this.style = plain.style;
    this.hasValue = plain.hasValue;
    this.valueFrom = plain.valueFrom;
    this.valueTo = plain.valueTo;
    this.formula = this.plainFormula();
    this.tags.at = plain.end;
    this.addCell();
    return true;
  }

  private plainFormula(): number {
    const { plain, repeatedFormulas: repeats } = this;
    const { column, formulaFrom, formulaTo } = plain;
    if (formulaFrom === formulaTo) return 0;
    return plain.repeated
      ? repeats.codeOf(column)
      : repeats.code(column, formulaFrom, formulaTo, this.newFormula);
  }

  /** Takes the row's number; tells whether it is hidden. */
  private rowAttributes(): boolean {
    const { tags } = this;
    let hidden = false;
    while (tags.nextAttribute())
      if (tags.letter === R) this.row = this.integer() - 1;
      else if (tags.isAttribute("hidden")) hidden ||= this.isTrue(tags.valueFrom);
      else if (tags.isAttribute("ht")) hidden ||= Number(this.attribute()) < HAIR;
    if (!(this.row >= 0 && this.row <= LAST_ROW)) throw tags.broken((is) => is.noRow);
    return hidden;
  }

  private readCell(): void {
    const { tags } = this;
    this.column += 1;
    this.kind = KIND_NUMBER;
    this.style = 0;
    this.formula = 0;
    this.hasValue = false;
    while (tags.nextAttribute())
      if (tags.letter === R) this.readColumn();
      else if (tags.letter === S) this.style = this.integer();
      else if (tags.letter === T) this.readKind();
    if (!tags.closed) while (tags.nextChild()) this.readInCell();
    this.addCell();
  }

  private addCell(): void {
    if (this.column > LAST_COLUMN) throw this.tags.broken((is) => is.noColumn);
    if (this.grid.size > this.mostCells) throw beyond("cells");
    if (this.hasValue) {
      this.addValue();
      this.noteUnseen();
    } else if (this.formula > 0) this.grid.cell(this.column, 0, this.formula);
  }

  private noteUnseen(): void {
    const why = this.given.unseen?.[this.style];
    if (why && this.unseen.size < MOST_UNSEEN) this.unseen.set(`${this.row},${this.column}`, why);
  }

  private readInCell(): void {
    const { tags } = this;
    if (tags.isNamed("v")) this.readContent();
    else if (tags.isNamed("f")) this.readFormula();
    else if (tags.isNamed("is"))
      if (this.kind === KIND_INLINE) this.readContent();
      else tags.skipElement();
    else this.skipExtension("values");
  }

  /**
   * Passes over what an extension puts among rows, cells and values (ECMA-376 part 1, 18.3.1.80, 18.3.1.73,
   * 18.3.1.4). Anything else is a name that was damaged: what it held would be missing unseen.
   */
  private skipExtension(among: string): void {
    const { tags } = this;
    if (!tags.isNamed("extLst") && !tags.isNamed("AlternateContent"))
      throw tags.broken((is) => is.otherElement(among));
    tags.skipElement();
  }

  private readContent(): void {
    const { tags } = this;
    tags.skipAttributes();
    this.valueFrom = tags.at;
    tags.skipContent();
    this.valueTo = tags.contentEnd;
    this.hasValue = true;
  }

  /** An address such as `AB12`: the row stands on its row too. */
  private readColumn(): void {
    let column = 0;
    for (let at = this.tags.valueFrom; at < this.tags.valueTo; at++) {
      const letter = (this.bytes[at] ?? 0) & 0xdf;
      if (letter < 65 || letter > 90) break;
      column = column * 26 + letter - 64;
    }
    if (column > 0) this.column = column - 1;
  }

  private readKind(): void {
    const { valueFrom, valueTo } = this.tags;
    // As a rule a single letter or `str`.
    const length = valueTo - valueFrom;
    const kind =
      length === 1
        ? LETTERS[this.bytes[valueFrom] ?? 0]
        : KINDS[decodeShort(this.bytes, valueFrom, valueTo)];
    if (kind === undefined) throw this.tags.broken((is) => is.unknownKind);
    this.kind = kind;
  }

  private integer(): number {
    return this.integerIn(this.tags.valueFrom, this.tags.valueTo);
  }

  private integerIn(from: number, to: number): number {
    let value = 0;
    for (let at = from; at < to; at++) {
      const digit = (this.bytes[at] ?? 0) - 48;
      if (digit < 0 || digit > 9) return Number.NaN;
      value = value * 10 + digit;
    }
    return value;
  }

  private isTrue(at: number): boolean {
    return this.bytes[at] === 49 || this.bytes[at] === 116;
  }

  private addValue(): void {
    const { grid, column, formula, kind } = this;
    if (kind !== KIND_TEXT && kind !== KIND_INLINE) this.trim();
    const { valueFrom, valueTo } = this;
    if (kind === KIND_NUMBER) this.addNumber();
    else if (kind === KIND_SHARED) this.addShared();
    else if (kind === KIND_TRUTH) grid.cell(column, grid.code(this.isTrue(valueFrom)), formula);
    else if (kind === KIND_DAY) this.addDay();
    else if (kind === KIND_INLINE)
      grid.cell(column, grid.code(textIn(this.bytes, valueFrom, valueTo, this.tags.part)), formula);
    else
      grid.cell(column, this.repeatedTexts.code(column, valueFrom, valueTo, this.newText), formula);
  }

  private readonly newText = (from: number, to: number): number =>
    this.grid.code(unescapedCell(plainText(this.bytes, from, to)));

  private addNumber(): void {
    const { grid, column, formula, given, valueFrom, valueTo } = this;
    if (valueFrom === valueTo) {
      if (formula > 0) grid.cell(column, 0, formula);
      return;
    }
    const value = readNumber(this.bytes, valueFrom, valueTo);
    if (Number.isNaN(value))
      grid.cell(column, grid.code(plainText(this.bytes, valueFrom, valueTo)), formula);
    else grid.number(column, given.number ? given.number(value, this.style) : value, formula);
  }

  /** Some programs write a day as such, not as its number. */
  private addDay(): void {
    const text = plainText(this.bytes, this.valueFrom, this.valueTo);
    const serial = serialOf(text);
    if (serial === undefined) this.grid.cell(this.column, this.grid.code(text), this.formula);
    else this.grid.number(this.column, serial, this.formula);
  }

  /** Blanks and ends of lines around a value that is no text belong to the file, not to the value. */
  private trim(): void {
    const { bytes } = this;
    while (this.valueFrom < this.valueTo && (bytes[this.valueFrom] ?? 0) <= BLANK) this.valueFrom++;
    while (this.valueFrom < this.valueTo && (bytes[this.valueTo - 1] ?? 0) <= BLANK) this.valueTo--;
  }

  private addShared(): void {
    if (this.valueFrom < this.valueTo) this.grid.cell(this.column, this.sharedCode(), this.formula);
    else if (this.formula > 0) this.grid.cell(this.column, 0, this.formula);
  }

  private sharedCode(): number {
    const index = this.integerIn(this.valueFrom, this.valueTo);
    const code = this.codes[index];
    if (code) return code;
    return this.newSharedCode(index);
  }

  private newSharedCode(index: number): number {
    if (Number.isNaN(index)) throw this.tags.broken((is) => is.noNumber(this.row + 1));
    const code = this.grid.code(this.given.texts.text(index));
    this.codes[index] = code;
    return code;
  }

  private readFormula(): void {
    const { tags, repeatedFormulas: repeats, column } = this;
    const { kind, area, shared } = this.formulaAttributes();
    const from = tags.at;
    const repeated = kind === "" && !tags.closed && repeats.isAgain(column, from);
    if (repeated) tags.at = repeats.end;
    tags.skipContent();
    const to = tags.contentEnd;
    if (repeated && to === repeats.end) this.formula = repeats.codeOf(column);
    else if (kind !== "")
      this.fills(kind, area, shared, from < to ? plainText(this.bytes, from, to) : "");
    else if (from < to) this.formula = repeats.code(column, from, to, this.newFormula);
  }

  private formulaAttributes() {
    const { tags } = this;
    const said = { kind: "", area: "", shared: -1 };
    while (tags.nextAttribute())
      if (tags.letter === T) said.kind = this.attribute();
      else if (tags.isAttribute("ref")) said.area = this.attribute();
      else if (tags.isAttribute("si")) said.shared = this.integer();
    if (said.kind === "normal") said.kind = "";
    return said;
  }

  private readonly newFormula = (from: number, to: number): number =>
    this.formulaNumber(plainText(this.bytes, from, to));

  private attribute(): string {
    return plainText(this.bytes, this.tags.valueFrom, this.tags.valueTo);
  }

  private formulaNumber(text: string | number): number {
    const known = this.formulaNumbers.get(text);
    if (known !== undefined) return known;
    const number = this.formulaTexts.push(text) - 1;
    this.formulaNumbers.set(text, number);
    return number;
  }

  /** A formula that fills more cells than its own, or is filled from another. */
  private fills(kind: string, reference: string, shared: number, formula: string): void {
    const { row, column } = this;
    if (kind === "shared" && shared >= 0) {
      if (formula !== "") this.shared.set(shared, { formula, row, column });
      this.formula = this.formulaNumber(formula === "" ? shared : formula);
      return;
    }
    if (formula === "") return;
    this.formula = this.formulaNumber(formula);
    const area = kind === "array" || kind === "dataTable" ? readArea(reference) : undefined;
    if (area && cellCount(area) > 1) this.arrays.push({ ...area, formula });
  }
}

const MOMENT = /^(?:(\d{4})-(\d\d)-(\d\d))?(?:T(\d\d):(\d\d)(?::(\d\d(?:\.\d+)?))?)?Z?$/;

/** The serial day of the 1900 system of a moment as ISO 8601 writes it; undefined where it is none. */
function serialOf(text: string): number | undefined {
  const found = text === "" ? undefined : MOMENT.exec(text);
  if (!found) return undefined;
  const [year, month, day, hours = 0, minutes = 0, seconds = 0] = found
    .slice(1)
    .map((piece) => (piece === undefined ? undefined : Number(piece)));
  const days =
    year === undefined ? 0 : Date.UTC(year, (month ?? 1) - 1, day ?? 1) / 86_400_000 + 25_569;
  return days + (hours * 3600 + minutes * 60 + seconds) / 86_400;
}
