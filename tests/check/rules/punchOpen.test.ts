import { expect, test } from "vitest";
import type { CellValue } from "../../../src/records/kind";
import { reportOf } from "../../support/checkBook";
import { CONTACT, ofRule, rowOf, sound, TODAY } from "../support";

const ITEM = { What: "Door scratched", Panel: "=K0002", Severity: "stop", State: "Open" };
const told = (change: Readonly<Record<string, CellValue>>, isFinal = true) => {
  const book = sound();
  book.addRow("GearPunchList", { ...ITEM, ...change });
  return reportOf(book.snapshot, TODAY, isFinal)
    .findings.filter(({ rule }) => rule === "punch-open")
    .map(({ weight, panel, column, message }) => [weight, panel, column, message]);
};

test.each([
  [{}, ["stop", "=K0002", "State", "On the punch list, and open: Door scratched"]],
  [
    { Severity: "note" },
    ["note", "=K0002", "State", "On the punch list, and open: Door scratched"],
  ],
  [
    { State: "In hand" },
    ["stop", "=K0002", "State", "On the punch list, and open: Door scratched"],
  ],
  [
    { State: "closed", Severity: null },
    [
      "query",
      "=K0002",
      "Closing note",
      "On the punch list, closed without a note that says how: Door scratched",
    ],
  ],
])("punch-open finds an item by hand that is not closed with a note: %j", (change, line) => {
  expect(told(change)).toEqual([line]);
});

test("punch-open keeps quiet: before hand-over, of findings, of what is closed with a note, of blank lines", () => {
  expect(told({}, false)).toEqual([]);
  expect(told({ Rule: "out-of-limits" })).toEqual([]);
  expect(told({ State: "Closed", "Closing note": "Painted over, 28 November" })).toEqual([]);
  expect(told({ What: null })).toEqual([]);
});

const CLOSED = {
  What: "Breaker Q0 L2: 88 µΩ, maker's limit 50",
  Panel: "=K0002",
  State: "Closed",
  "Closing note": "cleaned",
};
/** What is said in a check before hand-over, where the pole reads so much. */
const toldOf = (reading: number, change: Readonly<Record<string, CellValue>> = {}) => {
  const book = sound();
  book.set(CONTACT, rowOf(book, CONTACT, "=K0002", "L2"), "R µΩ", reading);
  book.addRow("GearPunchList", { ...ITEM, ...CLOSED, ...change });
  return ofRule(book.snapshot, "punch-open").map(({ column, message }) => [column, message]);
};

test("punch-open finds an item that was closed while its record still fails, in every check", () => {
  expect(toldOf(88)).toEqual([
    [
      "State",
      expect.stringMatching(/closed, and =K0002 · Breaker Q0 · L2 still fails \(Contacts, /),
    ],
  ]);
});

test("punch-open keeps quiet of a closed item whose record passes, or that names another, or is open", () => {
  expect(toldOf(41)).toEqual([]);
  expect(toldOf(88, { Panel: "=K0001" })).toEqual([]);
  expect(toldOf(88, { What: "Door scratched" })).toEqual([]);
  expect(toldOf(88, { State: "Open" })).toEqual([]);
});

test("punch-open finds a closed item that is linked to a record which still fails, and none that passes now", () => {
  const link = {
    Rule: "out-of-limits",
    Sheet: "Contacts",
    Row: "=K0002 · Breaker Q0 · L2",
    What: "Pole worn",
  };
  expect(toldOf(88, link)).toEqual([
    ["State", expect.stringMatching(/L2 still fails \(Contacts, /)],
  ]);
  expect(toldOf(41, link)).toEqual([]);
  expect(toldOf(88, { ...link, Rule: "stands-out" })).toEqual([]);
});
