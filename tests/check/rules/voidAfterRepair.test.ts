import { expect, test } from "vitest";
import { serialDay } from "../../../src/quantities/dates";
import { KINDS } from "../../../src/records/kinds";
import { WORKS } from "../../../src/records/repairs";
import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, INSULATION, ofRule, rowOf, sound, soundOf, TORQUE, WITHSTAND } from "../support";

/** The sound workbook: torque 3 November, contacts 12 November, insulation 14 November, withstand 16 November, insulation after 18 November 2026. */
const DAY = 46_340;
const CONTACT_DAY = DAY - 2;
const repair = {
  Sheet: "Contacts",
  Row: "=K0002 · Breaker Q0 · L1",
  "As found": "R µΩ 91.4; Fail",
  Tested: CONTACT_DAY,
  Cause: "Film on the contacts",
  "What was done": "Contacts cleaned",
  "Repaired by": "A. N. Other",
};
const repaired = (more: Readonly<Record<string, string | number>>, book = sound()): MemoryBook => {
  book.addRow("GearRepairs", { ...repair, ...more });
  return book;
};
const found = (book: MemoryBook) =>
  ofRule(book.snapshot, "void-after-repair").map(({ sheet, address, weight }) => [
    sheet,
    address,
    weight,
  ]);
const sheetOf = (table: string) => KINDS.find((kind) => kind.table === table)?.sheet;

test("without repairs nothing is void", () => {
  expect(found(sound())).toEqual([]);
});

test("a bus joint that was opened makes insulation and withstand of its section void, and the joint's own resistance", () => {
  const book = repaired({ "Work on": "Bus joint", Date: DAY + 6 });
  const at = (table: string, ...words: string[]) => [
    sheetOf(table),
    book.at(table, rowOf(book, table, ...words), "Date"),
  ];
  expect(found(book)).toEqual([
    // How the joints of the panel were tightened depends on which of them was opened.
    [...at(TORQUE, "=K0002", "Busbar"), "query"],
    // Its own record, and the joint to the next panel, of one day: one thing to do.
    [...at(CONTACT, "=K0002", "Breaker Q0", "L1"), "stop"],
    [...at(INSULATION, "Section 1", "Busbar", "before"), "stop"],
    [...at(INSULATION, "Section 1", "Busbar", "after"), "stop"],
    [...at(WITHSTAND, "Section 1", "Busbar", "L1"), "stop"],
  ]);
});

test("of another section nothing is void", () => {
  const book = repaired({ "Work on": "Bus joint", Date: DAY + 6 }, soundOf(11));
  const rows = ofRule(book.snapshot, "void-after-repair").map(({ row }) => row);
  expect(rows.filter((row) => row?.startsWith("Section 2") || row?.startsWith("=K0011"))).toEqual(
    [],
  );
  expect(rows.some((row) => row?.startsWith("Section 1"))).toBe(true);
});

test("what was tested on the day of the repair or later holds", () => {
  const sheets = (date: number) =>
    found(repaired({ "Work on": "Breaker pole", Date: date })).map(([sheet]) => sheet);
  // Timing was on 10 November.
  expect(sheets(CONTACT_DAY)).toEqual([sheetOf("GearTiming")]);
  expect(sheets(CONTACT_DAY + 1)).toEqual([sheetOf(CONTACT), sheetOf("GearTiming")]);
});

test("a repaired record that was not tested again stops, whatever the work", () => {
  const book = repaired({ "Work on": "Other", Date: DAY + 6 });
  const [one, ...others] = ofRule(book.snapshot, "void-after-repair");
  expect(others).toEqual([]);
  expect(one).toMatchObject({ weight: "stop", row: repair.Row, found: serialDay(CONTACT_DAY) });
  expect(one?.message).toMatch(/repaired on 2026-11-20. Test it again/);
});

test("a record that was reopened stands as failed until it is tested again", () => {
  const book = repaired({ "Work on": "Other", Date: DAY + 6 });
  const entries = KINDS.find(({ table }) => table === CONTACT)?.columns ?? [];
  for (const pole of ["L1", "L2", "L3"])
    for (const { header, role } of entries)
      if (role === "entry")
        book.set(CONTACT, rowOf(book, CONTACT, "=K0002", "Breaker Q0", pole), header, null);
  const result = rowOf(book, CONTACT, "=K0002", "Breaker Q0", "L1");
  book.set(CONTACT, result, "Result", "Missing");
  const [one] = ofRule(book.snapshot, "void-after-repair");
  expect(one?.message).toMatch(/failed, was repaired on 2026-11-20, and has not been tested again/);
});

test("a repair without work or day says nothing here: another rule asks for it", () => {
  expect(found(repaired({ Date: DAY + 6 }))).toEqual([]);
  expect(found(repaired({ "Work on": "Bus joint" }))).toEqual([]);
});

test("every work makes something void, save those of which nobody can say it", () => {
  const reached = new Set(KINDS.flatMap(({ voidBy = {} }) => Object.keys(voidBy)));
  expect(WORKS.filter((work) => !reached.has(work))).toEqual(["Other"]);
});
