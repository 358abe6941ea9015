import type { CellValue } from "../records/kind";
import type { Area } from "../sheets/cells/area";

/** A cell that holds something: a value, and the formula that gave it, as the sheet shows it without the equals sign. */
export interface Box {
  value: CellValue;
  formula?: string;
}

/** One property of the look of an area; where several reach a cell, the last one counts. */
export interface Look {
  area: Area;
  property: string;
  value: unknown;
}

export interface Format {
  id: string;
  areas: Area[];
  type: string;
  stopIfTrue: boolean;
  /** Properties of its rule and look by their path, as `rule.formula` or `format.fill.color`. */
  properties: Record<string, unknown>;
  /** A format made by hand, which the collection lists and cannot find again. */
  unfindable?: boolean;
}

export interface Validation {
  areas: Area[];
  properties: Record<string, unknown>;
}

export interface Table {
  id: string;
  name: string;
  /** Header row to last row, the total row included. */
  area: Area;
  showTotals: boolean;
  properties: Record<string, unknown>;
}

/** A text on a cell: a note, or a comment that others may answer. */
export interface Note {
  id: string;
  area: Area;
  content: string;
}

/** A name of the workbook for an area of a sheet. */
export interface Name {
  name: string;
  area: Area;
  visible: boolean;
}

export interface Sheet {
  id: string;
  name: string;
  /** By row, then column; undefined where a cell is blank. */
  cells: (Box | undefined)[][];
  looks: Look[];
  tables: Table[];
  /** In order of priority. */
  formats: Format[];
  validations: Validation[];
  merges: Area[];
  notes: Note[];
  comments: Note[];
  names: Name[];
  hiddenRows: Set<number>;
  hiddenColumns: Set<number>;
  /** The area that a filter stands on. */
  filter?: Area;
  frozen?: Area;
  /** Areas of ranges that the client keeps beyond a batch: they move with their cells. */
  kept: Set<Area>;
  protected: boolean;
  /** Areas that may be typed in while the sheet is protected. */
  unlocked: Area[];
  /** Page layout, gridlines and the like, by path. */
  properties: Record<string, unknown>;
}

export interface CustomXmlPart {
  id: string;
  xml: string;
}

/** Events of the collection of sheets that the stand-in knows. */
export type EventName = "changed" | "selectionChanged";

export interface StandInBook {
  sheets: Sheet[];
  parts: CustomXmlPart[];
  properties: Record<string, unknown>;
  /** Whether sheets may be added, renamed and removed. */
  structureProtected: boolean;
  active?: { sheet: string; area: Area };
  /** Events that the client asked to be told of. */
  listening: Set<EventName>;
  /** Formulas are worked out only when it is asked for. */
  isManual?: boolean;
  /** Set by every change of a cell; whoever calculates takes it away. */
  dirty: boolean;
  lastId: number;
}

export const newBook = (): StandInBook => ({
  sheets: [],
  parts: [],
  properties: {},
  structureProtected: false,
  dirty: false,
  lastId: 0,
  listening: new Set(),
});

/** An id as the host gives them: braced, and never a number. */
export const newId = (book: StandInBook): string => {
  book.lastId += 1;
  return `{${String(book.lastId).padStart(8, "0")}-57A4-4D11-0000-000000000000}`;
};

export function addSheet(book: StandInBook, name: string): Sheet {
  const sheet: Sheet = {
    id: newId(book),
    name,
    cells: [],
    looks: [],
    tables: [],
    formats: [],
    validations: [],
    merges: [],
    notes: [],
    comments: [],
    names: [],
    hiddenRows: new Set(),
    hiddenColumns: new Set(),
    kept: new Set(),
    protected: false,
    unlocked: [],
    properties: { visibility: "Visible" },
  };
  book.sheets.push(sheet);
  return sheet;
}

export const sheetNamed = (book: StandInBook, name: string): Sheet => {
  const sheet = book.sheets.find((sheet) => sheet.name.toLowerCase() === name.toLowerCase());
  if (!sheet) throw new Error(`no sheet ${name}`);
  return sheet;
};

export const tableNamed = (book: StandInBook, name: string): { sheet: Sheet; table: Table } => {
  for (const sheet of book.sheets) {
    const table = sheet.tables.find((table) => table.name.toLowerCase() === name.toLowerCase());
    if (table) return { sheet, table };
  }
  throw new Error(`no table ${name}`);
};

export const boxAt = (sheet: Sheet, row: number, column: number): Box | undefined =>
  sheet.cells[row]?.[column];

export function putBox(
  book: StandInBook,
  sheet: Sheet,
  row: number,
  column: number,
  box?: Box,
): void {
  while (sheet.cells.length <= row) sheet.cells.push([]);
  const cells = sheet.cells[row] as (Box | undefined)[];
  if (box) cells[column] = box;
  else delete cells[column];
  book.dirty = true;
}

/** The table that a cell belongs to. */
export const tableAt = (sheet: Sheet, row: number, column: number): Table | undefined =>
  sheet.tables.find(
    ({ area }) =>
      row >= area.top && row <= area.bottom && column >= area.left && column <= area.right,
  );

/** First and last row of a table's body. */
export const bodyRows = ({ area, showTotals }: Table): { first: number; last: number } => ({
  first: area.top + 1,
  last: area.bottom - (showTotals ? 1 : 0),
});

/** The look of one cell: the last value set for the property over it. */
export const lookAt = (sheet: Sheet, row: number, column: number, property: string): unknown =>
  sheet.looks.findLast(
    (look) =>
      look.property === property &&
      row >= look.area.top &&
      row <= look.area.bottom &&
      column >= look.area.left &&
      column <= look.area.right,
  )?.value;
