import fc from "fast-check";
import { expect, test } from "vitest";
import { historyRows } from "../../src/intake/historyRows";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import { rememberIntake, undoIntake } from "../../src/intake/undo";
import { type CellValue, isBlank, type RecordKind, type Row, rowKey } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import type { CellWrite } from "../../src/sheets/cells/cell";
import type { LastIntake } from "../../src/sheets/kept/lastIntake";
import {
  HISTORY_COLUMNS,
  HISTORY_TABLE,
  historyUnwrites,
  historyWrites,
} from "../../src/sheets/ours/historySheet";
import type { TableSnapshot } from "../../src/sheets/snapshot";
import { english, inWords } from "../support/inWords";
import { longLineup } from "../support/lineups";

const lineup = longLineup(2);
const CONTACT = KINDS.find(({ id }) => id === "contact") as RecordKind;
const KEYS = ["object", "part", "pole"];

interface Book {
  readonly rows: readonly Row[];
  readonly history: readonly (readonly CellValue[])[];
  readonly last?: LastIntake;
}

const blank = (): Book => ({
  rows: CONTACT.rows(lineup),
  history: [HISTORY_COLUMNS.map(() => null)],
});
const tableOf = ({ rows }: Book) => ({ kind: CONTACT, rows, table: { name: CONTACT.table } });
const historyTable = ({ history }: Book): TableSnapshot => ({
  name: HISTORY_TABLE,
  sheet: "Reading history",
  top: 3,
  left: 0,
  headers: HISTORY_COLUMNS.map(({ header }) => header),
  rowCount: history.length,
  cell: (row, column) => history[row]?.[column] ?? null,
  formula: () => undefined,
});

const written = (
  cells: readonly { row: number; column: string; value: CellValue }[],
  rows: readonly Row[],
) =>
  rows.map((row, index) => ({
    ...row,
    ...Object.fromEntries(
      cells.filter((cell) => cell.row === index).map(({ column, value }) => [column, value]),
    ),
  }));
const inHistory = (writes: readonly CellWrite[], history: Book["history"]) => {
  const after = history.map((row) => [...row]);
  for (const { row, column, value } of writes) {
    while (after.length <= row) after.push(HISTORY_COLUMNS.map(() => null));
    (after[row] as CellValue[])[column] = value;
  }
  return after;
};

interface Reading {
  readonly row: number;
  readonly value: number;
  readonly day: number;
  readonly minute: number;
}

const exported = (readings: readonly Reading[]): string =>
  [
    "Panel,Part,Pole,R (µΩ),Date,Time",
    ...readings.map(({ row, value, day, minute }) => {
      const { object, part, pole } = CONTACT.rows(lineup)[row] ?? {};
      return `${object},${part},${pole},${value},2026-11-${String(day).padStart(2, "0")},10:${String(minute).padStart(2, "0")}`;
    }),
  ].join("\n");

const takeIn = (book: Book, text: string, name: string): Book => {
  const read = readExport(text, { name });
  if (!read.ok) throw new Error(read.say(english));
  const { placed, kept } = placeReadings(read.value, [tableOf(book)], { replace: true });
  const { writes, rows } = historyWrites(historyRows(kept, 46_400), historyTable(book));
  return {
    rows: written(placed, book.rows),
    history: inHistory(writes, book.history),
    last: rememberIntake(placed, [...rows], [name], 46_400),
  };
};

const undo = (book: Book): Book => {
  if (!book.last) return book;
  const { cells } = undoIntake(book.last, [tableOf(book)]);
  return {
    rows: written(cells, book.rows),
    history: inHistory(historyUnwrites(book.last.history, historyTable(book)), book.history),
  };
};

const entries = ({ history }: Book) => history.filter((row) => !row.every(isBlank));
const shownRows = ({ rows }: Book) =>
  rows.map((row) => Object.fromEntries(Object.entries(row).filter(([, value]) => !isBlank(value))));
const same = (one: Book, other: Book) => {
  expect(shownRows(one)).toEqual(shownRows(other));
  expect(entries(one)).toEqual(entries(other));
};

const reading = fc.record({
  row: fc.nat({ max: CONTACT.rows(lineup).length - 1 }),
  value: fc.integer({ min: 20, max: 40 }),
  day: fc.integer({ min: 1, max: 9 }),
  minute: fc.integer({ min: 0, max: 59 }),
});
const file = fc.array(reading, { minLength: 1, maxLength: 6 });
const step = fc.oneof(
  { weight: 3, arbitrary: file.map((readings) => ({ kind: "intake" as const, readings })) },
  { weight: 1, arbitrary: fc.constant({ kind: "undo" as const }) },
  { weight: 1, arbitrary: fc.constant({ kind: "again" as const }) },
);

test("any sequence of intake, undo and intake again leaves readings and history consistent", () => {
  fc.assert(
    fc.property(fc.array(step, { minLength: 1, maxLength: 8 }), (steps) => {
      let book = blank();
      let before: Book | undefined;
      let text = "";
      let name = "";
      // Every value that was written and not taken back: on its record, or in the history.
      let standing: string[] = [];
      let standingBefore: string[] = [];
      const valueKey = (row: number, value: CellValue) => `${row} ${value}`;
      steps.forEach((one, index) => {
        if (one.kind === "intake") {
          [text, name] = [exported(one.readings), `file${index}.csv`];
          [before, standingBefore] = [book, standing];
          book = takeIn(book, text, name);
          standing = [
            ...standing,
            ...(book.last?.cells ?? [])
              .filter(({ column }) => column === "reading")
              .map(({ row, value }) => valueKey(row, value)),
          ];
          // The same export once more changes nothing.
          const again = takeIn(book, text, name);
          same(again, book);
        } else if (one.kind === "undo") {
          const undone = undo(book);
          if (before && book.last) {
            same(undone, before);
            standing = standingBefore;
          }
          book = undone;
          before = undefined;
        } else if (text !== "") {
          const after = takeIn(undo(book), text, name);
          if (before && book.last) same(after, book);
        }
        const held = new Set([
          ...book.rows.map((row, at) => valueKey(at, row.reading ?? null)),
          ...entries(book)
            .filter(([, , column]) => column === "R µΩ")
            .map(([, key, , value]) =>
              valueKey(
                book.rows.findIndex((row) => rowKey(row, KEYS) === key),
                value ?? null,
              ),
            ),
        ]);
        for (const value of standing) expect(held).toContain(value);
        // Nothing stands twice in the history.
        const told = entries(book).map((row) => JSON.stringify(row.slice(0, 6)));
        expect(new Set(told).size).toBe(told.length);
      });
    }),
    { numRuns: 100 },
  );
});

test("a cell that was changed since is not taken back, and that is said", () => {
  const taken = takeIn(blank(), exported([{ row: 0, value: 25, day: 2, minute: 0 }]), "a.csv");
  const rows = taken.rows.map((row, at) => (at === 0 ? { ...row, reading: 26 } : row));
  const { cells, refused } = undoIntake(taken.last as LastIntake, [tableOf({ ...taken, rows })]);
  expect(cells.map(({ column }) => column).sort()).toEqual(["date", "origin"]);
  expect(inWords(refused).map(({ reason }) => reason)).toEqual([
    '=K0001 · Breaker Q0 · L1, "R µΩ": holds 26 now, the intake had written 25',
  ]);
});

test("a record that moved is found by its keys; one that is gone is said", () => {
  const taken = takeIn(blank(), exported([{ row: 0, value: 25, day: 2, minute: 0 }]), "a.csv");
  const last = taken.last as LastIntake;
  const moved = undoIntake(last, [tableOf({ ...taken, rows: [...taken.rows].reverse() })]);
  expect(moved.cells.map(({ row }) => row)).toEqual(last.cells.map(() => taken.rows.length - 1));
  expect(
    inWords(
      undoIntake(last, [tableOf({ ...taken, rows: taken.rows.slice(1) })]).refused[0]?.reason,
    ),
  ).toBe("=K0001 · Breaker Q0 · L1: the record is no longer one row of its table");
});
