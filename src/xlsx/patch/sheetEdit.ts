import type { CellValue } from "../../records/kind";
import { BookError } from "../../sheets/bookError";
import { a1 } from "../../sheets/cells/address";
import { type Area, areaAddress, readArea } from "../../sheets/cells/area";
import { bytesOf, textOf } from "../package/partText";
import type { ReadSheet } from "../readSheet";
import { type FormulaAt, filled, formulasOf } from "../scan/formulasOf";
import { plainStyles } from "../scan/plainStyles";
import { type Edit, edited, setAttribute } from "../xml/editText";
import { childOf, childrenOf, readXml, type XmlElement } from "../xml/readXml";
import type { TextNumber } from "./cellXml";
import { type CellPatch, columnsOf, patchedRow, type RowPatch, rowXml } from "./rowPatch";
import { joined } from "./texts";

/** A cell to be written. */
export interface SheetWrite {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  readonly formula?: string;
  /** The style of a cell that is not there yet; of one that is there its own stays. */
  readonly style?: number;
}

/**
 * One sheet's part being changed: cells are written into the bytes of their rows, and what stands before and
 * behind the cells is edited as text. Everything else stays as it is.
 */
export class SheetEdit {
  private readonly rows = new Map<number, RowPatch>();
  private readonly edits: Edit[] = [];
  private readonly styles = new Map<number, ReadonlyMap<number, number>>();
  private plain: ReturnType<typeof plainStyles> | undefined;
  private formulas: FormulaAt | undefined;
  private places: ReadonlyMap<number, number> | undefined;
  /** Whether a cell got or lost a formula. */
  formulasChanged = false;

  constructor(
    readonly part: string,
    readonly read: ReadSheet,
    private readonly number: TextNumber,
  ) {}

  /** The formula of a cell as it stands in the file. */
  private formulaAt(row: number, column: number): string | undefined {
    const { cells, formulas } = this.read.scanned;
    this.formulas ??= formulasOf(cells, formulas);
    return this.formulas(row, column);
  }

  /** The place of each row among those that the file writes. */
  private get rowAt(): ReadonlyMap<number, number> {
    this.places ??= new Map(this.read.scanned.places.rows.map((row, at) => [row, at]));
    return this.places;
  }

  /** The outermost element, without the cells. */
  get root(): XmlElement {
    return this.read.around.root;
  }

  /** The text that the elements of `root` stand in. */
  get text(): string {
    return this.read.around.text;
  }

  get isChanged(): boolean {
    return this.rows.size + this.edits.length > 0;
  }

  edit(...edits: readonly Edit[]): void {
    this.edits.push(...edits);
  }

  /** Whether any cell of an area holds something. */
  holdsAny({ top, left, bottom, right }: Area): boolean {
    const { starts, columns } = this.read.scanned.cells;
    for (let row = top; row <= bottom; row++)
      for (let at = starts[row] ?? 0; at < (starts[row + 1] ?? 0); at++)
        if ((columns[at] ?? 0) >= left && (columns[at] ?? 0) <= right) return true;
    return false;
  }

  /** Whether somebody set the height of a row. */
  hasSetHeight(row: number): boolean {
    const tag = /^<[^>]*>/.exec(this.rowText(row) ?? "")?.[0] ?? "";
    return /\scustomHeight\s*=\s*["'](1|true)/.test(tag);
  }

  /** Gives a row an attribute. */
  setRow(row: number, name: string, value: string): void {
    this.patchOf(row).attributes.set(name, value);
  }

  /** The attributes of a row and its cells as they are written; undefined where it is not there. */
  rowText(row: number): string | undefined {
    const at = this.rowAt.get(row);
    if (at === undefined) return undefined;
    const { begins, ends } = this.read.scanned.places;
    return textOf(this.read.bytes.subarray(begins[at] ?? 0, ends[at] ?? 0));
  }

  /** The style of each cell of a row, by column; of a cell that is not there none. */
  stylesIn(row: number): ReadonlyMap<number, number> {
    const known = this.styles.get(row);
    if (known) return known;
    const found = this.readStyles(row);
    this.styles.set(row, found);
    return found;
  }

  private readStyles(row: number): ReadonlyMap<number, number> {
    const at = this.rowAt.get(row);
    if (at === undefined) return new Map();
    const { bytes, scanned } = this.read;
    this.plain ??= plainStyles(bytes);
    const plain = this.plain(scanned.places.begins[at] ?? 0, scanned.places.ends[at] ?? 0);
    if (plain) return plain;
    const cells = childrenOf(readXml(this.rowText(row) ?? ""), "c");
    const columns = columnsOf(cells);
    return new Map(
      cells.map(({ attributes }, at) => [columns[at] ?? 0, Number(attributes.get("s") ?? 0)]),
    );
  }

  /** @throws {BookError} for a cell within an array formula over several cells, of which none can be changed alone */
  write({ row, column, value, formula, style }: SheetWrite): void {
    const there = this.formulaAt(row, column);
    const kept = formula !== undefined && there === formula;
    if (there !== formula) {
      this.refuseArray(row, column);
      this.formulasChanged = true;
    }
    this.patchOf(row).cells.set(column, { value, formula, kept, style });
  }

  /** Takes a cell out of the sheet, its look with it. */
  cut(row: number, column: number): void {
    if (this.formulaAt(row, column) !== undefined) {
      this.refuseArray(row, column);
      this.formulasChanged = true;
    }
    this.patchOf(row).cells.set(column, { value: null, kept: false, gone: true });
  }

  private refuseArray(row: number, column: number): void {
    const array = this.read.scanned.formulas.arrays.find(
      ({ top, left, bottom, right }) =>
        row >= top && row <= bottom && column >= left && column <= right,
    );
    if (array)
      throw new BookError(({ book }) => book.arrayFormula(areaAddress(array), a1(row, column)));
  }

  private patchOf(row: number): RowPatch {
    const there = this.rows.get(row);
    if (there) return there;
    const patch: RowPatch = { row, attributes: new Map(), cells: new Map() };
    this.rows.set(row, patch);
    return patch;
  }

  /** The new bytes of the part. */
  bytes(): Uint8Array {
    if (this.rows.size > 0) this.passOnShared();
    this.reach();
    const { bytes, around } = this.read;
    const { from, to, end } = around.place;
    const before = this.edits.filter((edit) => edit.to <= around.gap);
    const behind = this.edits.filter((edit) => edit.to > around.gap);
    const head = edited(around.text.slice(0, around.gap), before);
    const tail = edited(
      around.text.slice(around.gap),
      behind.map((edit) => ({
        ...edit,
        from: edit.from - around.gap,
        to: edit.to - around.gap,
      })),
    );
    if (this.rows.size === 0)
      return joined([bytesOf(head), bytes.subarray(from, to), bytesOf(tail)]);
    const [open, close] = from === end ? this.opened(head) : [head, ""];
    return joined([bytesOf(open), ...this.pieces(), bytesOf(close), bytesOf(tail)]);
  }

  /** Cells that are written as none at all, opened to take some. */
  private opened(head: string): [string, string] {
    const tag = `${this.root.prefix}sheetData`;
    return [head.replace(/\s*\/>$/, ">"), `</${tag}>`];
  }

  /** The rows, those that are changed made anew. */
  private *pieces(): Generator<Uint8Array> {
    const { bytes, scanned } = this.read;
    const { from, to, rows, begins } = scanned.places;
    const p = this.root.prefix;
    const patches = [...this.rows.values()].sort((one, other) => one.row - other.row);
    let done = from;
    let next = 0;
    for (const patch of patches) {
      const at = this.rowAt.get(patch.row);
      if (at === undefined) {
        while (next < rows.length && (rows[next] ?? 0) < patch.row) next += 1;
        const place = Math.max(done, begins[next] ?? to);
        yield bytes.subarray(done, place);
        yield bytesOf(rowXml(p, patch, this.number));
        done = place;
      } else {
        const place = begins[at] ?? 0;
        yield bytes.subarray(done, place);
        yield bytesOf(patchedRow(this.rowText(patch.row) ?? "", patch, this.number));
        done = scanned.places.ends[at] ?? 0;
      }
    }
    yield bytes.subarray(done, to);
  }

  /** Where the cell goes that holds the text of a formula for others, the next of them holds it. */
  private passOnShared(): void {
    const { formulas } = this.read.scanned;
    for (const [number, { formula, row, column }] of formulas.shared) {
      const patch = this.rows.get(row)?.cells.get(column);
      if (!patch || patch.kept) continue;
      const heirs = this.sharing(number);
      const [heir] = heirs;
      if (!heir) continue;
      const area = heirs.reduce(
        (all, { row, column }) => ({
          top: Math.min(all.top, row),
          left: Math.min(all.left, column),
          bottom: Math.max(all.bottom, row),
          right: Math.max(all.right, column),
        }),
        { top: heir.row, left: heir.column, bottom: heir.row, right: heir.column },
      );
      const text = filled(formula, row, column)(heir.row, heir.column) ?? formula;
      const before = this.patchOf(heir.row).cells.get(heir.column);
      const shared = { number, area: areaAddress(area), text };
      const cell: CellPatch = before
        ? { ...before, shared }
        : { value: undefined, kept: true, formula: text, shared };
      this.patchOf(heir.row).cells.set(heir.column, cell);
    }
  }

  /** The cells that still take a shared formula from another cell. */
  private sharing(number: number): { row: number; column: number }[] {
    const { cells, formulas } = this.read.scanned;
    const found: { row: number; column: number }[] = [];
    for (let row = 0; row + 1 < cells.starts.length; row++)
      for (let at = cells.starts[row] ?? 0; at < (cells.starts[row + 1] ?? 0); at++) {
        const column = cells.columns[at] ?? 0;
        if (formulas.texts[cells.formulas[at] ?? 0] !== number) continue;
        if (this.rows.get(row)?.cells.get(column)?.kept !== false) found.push({ row, column });
      }
    return found;
  }

  /** The area that a sheet says it uses, as far as the new cells reach. */
  private reach(): void {
    const dimension = childOf(this.root, "dimension");
    const area = readArea(dimension?.attributes.get("ref") ?? "");
    if (!dimension || !area || this.rows.size === 0) return;
    const wider = this.cutBack(area);
    for (const { row, cells } of this.rows.values())
      for (const [column, { gone }] of cells) {
        if (gone) continue;
        wider.top = Math.min(wider.top, row);
        wider.bottom = Math.max(wider.bottom, row);
        wider.left = Math.min(wider.left, column);
        wider.right = Math.max(wider.right, column);
      }
    const ref = areaAddress(wider);
    if (areaAddress(area) !== ref) this.edit(setAttribute(this.text, dimension, "ref", ref));
  }

  /** The area that a sheet says it uses, less what goes at its right and its foot. */
  private cutBack(area: Area): Area {
    const gone = new Map(
      [...this.rows.values()].map(({ row, cells }) => [
        row,
        new Set([...cells].flatMap(([column, cell]) => (cell.gone ? [column] : []))),
      ]),
    );
    if ([...gone.values()].every(({ size }) => size === 0)) return { ...area };
    const { starts, columns } = this.read.scanned.cells;
    const kept = { right: area.left, bottom: area.top };
    for (let row = 0; row + 1 < starts.length; row++)
      for (let at = starts[row] ?? 0; at < (starts[row + 1] ?? 0); at++) {
        const column = columns[at] ?? 0;
        if (gone.get(row)?.has(column)) continue;
        kept.right = Math.max(kept.right, column);
        kept.bottom = Math.max(kept.bottom, row);
      }
    const [right, bottom] = [...gone].reduce(
      ([right, bottom], [row, cells]) => [
        Math.max(right, ...cells),
        cells.size > 0 ? Math.max(bottom, row) : bottom,
      ],
      [-1, -1],
    );
    return {
      ...area,
      right: right >= area.right ? kept.right : area.right,
      bottom: bottom >= area.bottom ? kept.bottom : area.bottom,
    };
  }
}
