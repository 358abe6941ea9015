import fc from "fast-check";
import {
  bodyRows,
  boxAt,
  putBox,
  type Sheet,
  type StandInBook,
  type Table,
} from "../../../src/standin/book";
import {
  deleteColumns,
  deleteRows,
  insertColumns,
  insertRows,
  renameSheet,
} from "../../../src/standin/edits";
import {
  deleteSheet,
  deleteTableRow,
  filterTable,
  insertTableRow,
  resizeTable,
  sortByColumn,
  type Undoable,
  undo,
} from "../../../src/standin/userActs";
import { RECORDS, readingOf } from "./tokens";

/** What the acts of a user have at hand. */
export interface Desk {
  readonly book: StandInBook;
  /** A serial number that no reading has. */
  readonly serial: () => number;
  /** The workbook before the last batch. */
  readonly point?: Undoable;
  /** Another pane brings a file in. */
  readonly other: () => Promise<void>;
}

/** Something that somebody does between two batches. */
export interface Act {
  readonly what: string;
  readonly of: number;
  readonly to: number;
}

type Do = (desk: Desk, sheet: Sheet, { of, to }: Act) => void | Promise<void>;

const pick = <T>(items: readonly T[], at: number): T | undefined => items[at % items.length];

/** The sheet with records on it, and its table where it has one. */
const recordSheet = ({ sheets }: StandInBook): Sheet | undefined =>
  sheets.find(({ tables, cells }) =>
    tables.length > 0
      ? tables.some(({ name }) => name === "GearContact")
      : cells.some((row) => row?.some((box) => box?.value === "Bay")),
  );

const withTable =
  (act: (desk: Desk, sheet: Sheet, table: Table, given: Act) => void): Do =>
  (desk, sheet, given) => {
    const table = pick(sheet.tables, given.of);
    if (table) act(desk, sheet, table, given);
  };

const rowsOf = (table: Table) => {
  const { first, last } = bodyRows(table);
  return last - first + 1;
};

/** The row below which a sheet's records stand. */
const titlesRow = ({ tables, cells }: Sheet): number =>
  tables[0]?.area.top ?? cells.findIndex((row) => row?.some((box) => box?.value === "Bay"));

/** A reading typed for a record, where its row and column stand. */
const typeReading: Do = ({ book, serial }, sheet, { of }) => {
  const top = titlesRow(sheet);
  const record = of % RECORDS.length;
  const { panel, part, pole } = RECORDS[record] as (typeof RECORDS)[number];
  const isOwn = sheet.tables.length === 0;
  const names = isOwn ? [panel, part] : [panel, part, pole];
  const row = sheet.cells.findIndex((cells) =>
    names.every((name) => cells?.some((box) => box?.value === name)),
  );
  const title = isOwn ? `${pole} (mΩ)` : "R µΩ";
  const column = sheet.cells[top]?.findIndex((box) => box?.value === title) ?? -1;
  if (row < 0 || column < 0) return;
  const value = readingOf(record, serial());
  putBox(book, sheet, row, column, { value: isOwn ? value / 1000 : value });
};

export const ACTS: Readonly<Record<string, Do>> = {
  "types a reading": typeReading,
  "types a reading for another record": (desk, sheet, act) =>
    typeReading(desk, sheet, { ...act, of: act.of + 1 }),
  "blanks a reading": ({ book }, sheet, { of, to }) => {
    const row = titlesRow(sheet) + 1 + (of % 6);
    const title = sheet.tables.length === 0 ? `L${1 + (to % 3)} (mΩ)` : "R µΩ";
    const column = sheet.cells[titlesRow(sheet)]?.findIndex((box) => box?.value === title) ?? -1;
    if (column >= 0 && boxAt(sheet, row, column)) putBox(book, sheet, row, column);
  },
  "puts a sheet row in": ({ book }, sheet, { to }) =>
    insertRows(book, sheet, to % 12, 1 + (to % 2)),
  "takes a sheet row out": ({ book }, sheet, { to }) => {
    const row = to % 12;
    // Excel does not take the titles of a table away alone.
    if (sheet.tables.every(({ area }) => area.top !== row && area.bottom - area.top > 1))
      deleteRows(book, sheet, row, 1);
  },
  "puts a column in": ({ book }, sheet, { to }) => insertColumns(book, sheet, to % 14, 1),
  "takes a column out": ({ book }, sheet, { to }) => deleteColumns(book, sheet, to % 14, 1),
  "puts a table row in": withTable(({ book }, sheet, table, { to }) =>
    insertTableRow(book, sheet, table, to % rowsOf(table)),
  ),
  "takes a table row out": withTable(({ book }, sheet, table, { to }) =>
    deleteTableRow(book, sheet, table, to % rowsOf(table)),
  ),
  sorts: withTable(({ book }, _sheet, table, { to }) =>
    sortByColumn(book, table, to % 12, to % 2 === 0),
  ),
  "lets two rows change places": (desk, sheet, { of, to }) => {
    const first = titlesRow(sheet) + 1;
    const last = sheet.tables[0]?.area.bottom ?? first + 1;
    const [one, other] = [of, to].map((at) => first + (at % (last - first + 1))) as [
      number,
      number,
    ];
    const [above, below] = [sheet.cells[one] ?? [], sheet.cells[other] ?? []];
    sheet.cells[one] = below;
    sheet.cells[other] = above;
    desk.book.dirty = true;
  },
  filters: withTable((_desk, sheet, table, { to }) =>
    filterTable(sheet, table, (row) => row[2] !== `L${1 + (to % 3)}`),
  ),
  "resizes a table": withTable(({ book }, _sheet, table, { to }) =>
    resizeTable(book, table, (to % 4) - 2),
  ),
  "renames the sheet": ({ book }, sheet, { to }) => {
    if (!book.sheets.some(({ name }) => name === `Own ${to % 3}`))
      renameSheet(book, sheet.name, `Own ${to % 3}`);
  },
  "takes a sheet away": ({ book }, _sheet, { of }) => {
    const sheet = pick(book.sheets, of);
    if (sheet) deleteSheet(book, sheet);
  },
  "takes the history away": ({ book }) => {
    const history = book.sheets.find(({ tables }) =>
      tables.some(({ name }) => name === "GearHistory"),
    );
    if (history) deleteSheet(book, history);
  },
  "puts a history row in": ({ book }) => {
    const history = book.sheets.find(({ tables }) =>
      tables.some(({ name }) => name === "GearHistory"),
    );
    const [table] = history?.tables ?? [];
    if (history && table) insertTableRow(book, history, table, 0);
  },
  "hides the sheet": (_desk, sheet, { to }) => {
    sheet.properties.visibility = ["Hidden", "VeryHidden", "Visible"][to % 3];
  },
  "protects the sheet": (_desk, sheet) => {
    sheet.protected = !sheet.protected;
  },
  "protects the workbook": ({ book }) => {
    book.structureProtected = !book.structureProtected;
  },
  undoes: ({ book, point }) => {
    if (point) undo(book, point);
  },
  "another pane brings a file in": ({ other }) => other(),
};

/** What is done at a desk more often than the rest, and goes to the heart of where a reading belongs. */
const OFTEN: Readonly<Record<string, number>> = {
  "types a reading": 5,
  sorts: 4,
  "lets two rows change places": 4,
  "puts a sheet row in": 3,
  "takes a sheet row out": 2,
  "puts a column in": 2,
  "puts a table row in": 2,
  "takes a table row out": 2,
  "another pane brings a file in": 2,
  undoes: 2,
};

export const act: fc.Arbitrary<Act> = fc.record({
  what: fc.oneof(
    ...Object.keys(ACTS).map((what) => ({
      arbitrary: fc.constant(what),
      weight: OFTEN[what] ?? 1,
    })),
  ),
  of: fc.nat(23),
  to: fc.nat(23),
});

export async function perform(desk: Desk, given: Act): Promise<void> {
  const sheet = recordSheet(desk.book) ?? pick(desk.book.sheets, given.of);
  if (sheet) await ACTS[given.what]?.(desk, sheet, given);
}
