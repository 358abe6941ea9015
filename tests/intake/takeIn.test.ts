import { describe, expect, test } from "vitest";
import { openBook, reopenBook } from "../../src/intake/openBook";
import { takeBack } from "../../src/intake/takeBack";
import { NO_ANSWERS, takeIn, withoutHeldBack, withResults } from "../../src/intake/takeIn";
import { filledPlan } from "../support/fill";
import { english, inWords } from "../support/inWords";
import { longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

/** 24 November 2026. */
const TODAY = 46_350;
const lineup = longLineup(2);
const opened = () => openBook(memoryBook(filledPlan(lineup, 3)).snapshot);
const READING = "=K0001,Breaker Q0,L1";
const file = (name: string, value: number, day: string) => ({
  name,
  content: `Panel,Part,Pole,R (µΩ),Date\n${READING},${value},${day}\n`,
});
const done = (...args: Parameters<typeof takeIn>) => {
  const intake = takeIn(...args);
  if (!intake.ok) throw new Error(intake.reason(english));
  return intake;
};

describe("takeIn", () => {
  test("what a later export replaces of an earlier one goes to the history, and the cell keeps its first value to go back to", () => {
    const book = opened();
    const before = book.tables.find(({ kind }) => kind.id === "contact")?.rows[0]?.reading;
    const files = [file("one.csv", 41, "2030-01-01"), file("two.csv", 42, "2030-01-02")];
    const intake = done(book, files, { replace: true }, TODAY);
    const history = intake.history.filter(({ column }) => column === "R µΩ");
    expect(history.map(({ value }) => value)).toEqual([before, 41]);
    const cells = intake.before.remembered.last?.cells.filter(({ column }) => column === "reading");
    expect(cells).toMatchObject([{ old: before, value: 42 }]);
    expect(intake.before.remembered.last).toMatchObject({
      on: TODAY,
      files: ["one.csv", "two.csv"],
    });
  });

  test("bytes and text come to the same", () => {
    const book = opened();
    const { name, content } = file("one.csv", 41, "2030-01-01");
    const bytes = { name, content: new TextEncoder().encode(content) };
    const [text, decoded] = [[{ name, content }], [bytes]].map(
      (sources) => done(book, sources, { replace: true }, TODAY).cells,
    );
    expect(text?.length).toBeGreaterThan(1);
    expect(decoded).toEqual(text);
  });

  test("an export that cannot be read is named, and why", () => {
    const good = file("one.csv", 41, "2030-01-01");
    const bad = { name: "none.csv", content: "Colour,Weight\nred,12\n" };
    expect(inWords(takeIn(opened(), [good, bad], NO_ANSWERS, TODAY))).toMatchObject({
      ok: false,
      source: { name: "none.csv" },
      reason: expect.stringMatching(/no row of titles/),
    });
  });

  test("answers are remembered under their name, and read the next export with these titles", () => {
    const book = opened();
    const content = `Bay 9,What,Pole,R (µΩ)\n${READING},41\n`;
    const source = { name: "own.csv", content };
    const answers = { replace: true, columns: { "Bay 9": "object", What: "part" } };
    const first = done(book, [source], { ...answers, rememberAs: " crew 2 " }, TODAY);
    const { mappings } = first.before.remembered;
    expect(mappings.map(({ name }) => name)).toEqual(["crew 2"]);
    const next = { ...book, remembered: { ...book.remembered, mappings } };
    const again = done(next, [source], { replace: true }, TODAY);
    expect(again.taken[0]?.mapping?.name).toBe("crew 2");
    expect(again.cells).toEqual(first.cells);
  });

  test("of an intake that is held back whole nothing is remembered", () => {
    const book = opened();
    const intake = done(book, [file("one.csv", 41, "2030-01-01")], { replace: true }, TODAY);
    const { gone, remembered } = withoutHeldBack(book, intake, [], intake.cells);
    expect(intake.history.length).toBeGreaterThan(0);
    expect(gone).toEqual(intake.history);
    expect(remembered).toEqual(book.remembered);
  });

  test("what is written is taken back", () => {
    const memory = memoryBook(filledPlan(lineup, 3));
    const book = openBook(memory.snapshot);
    const intake = done(book, [file("one.csv", 41, "2030-01-01")], { replace: true }, TODAY);
    const changed = withResults(book, intake.cells).filter(({ writes }) => writes.length > 0);
    expect(changed.map(({ table }) => table.name)).toEqual(["GearContact"]);
    const written = {
      ...book,
      remembered: intake.before.remembered,
      tables: book.tables.map((table) => ({
        ...table,
        rows: table.rows.map((row, index) => ({
          ...row,
          ...Object.fromEntries(
            intake.cells
              .filter((cell) => cell.table.kind === table.kind && cell.row === index)
              .map(({ column, value }) => [column, value]),
          ),
        })),
      })),
    };
    const back = takeBack(written);
    expect(back?.refused).toEqual([]);
    expect(back?.cells.map(({ column, value }) => [column, value])).toEqual(
      intake.cells.map(({ column, old }) => [column, old]),
    );
    expect(back?.remembered).toEqual(book.remembered);
    expect(takeBack(book)).toBeUndefined();
  });
});

test("a book after an edit keeps its frame, and the tables that the edit did not reach", () => {
  const { snapshot } = memoryBook(filledPlan(lineup, 3));
  const book = openBook(snapshot);
  const edited = (name: string) => ({
    ...snapshot,
    sheets: snapshot.sheets.map((sheet) => ({
      ...sheet,
      tables: sheet.tables.map((table) => (table.name === name ? { ...table } : table)),
    })),
  });
  const after = reopenBook(book, edited("GearContact"));
  expect(after.frame).toBe(book.frame);
  const fresh = after.tables.filter((table, index) => table !== book.tables[index]);
  expect(fresh.map(({ table }) => table.name)).toEqual(["GearContact"]);
  // The instruments are read from a table that is no record table.
  expect(reopenBook(book, edited("GearInstruments")).frame).not.toBe(book.frame);
});
