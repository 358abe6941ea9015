import { expect, test } from "vitest";
import { ofRule, sound, TODAY } from "../support";

/** A repair that says enough, made after the failed test of 14 November 2026. */
const WHOLE = {
  Sheet: "Contacts",
  Row: "=K0002 · Breaker Q0 · L1",
  "As found": "R µΩ 91.4; Fail",
  Tested: 46_340,
  Cause: "Film on the contacts",
  "Work on": "Other",
  "What was done": "Contacts cleaned",
  "Repaired by": "A. N. Other",
  Date: 46_340,
};
const told = (change: Readonly<Record<string, string | number | null>>) => {
  const book = sound();
  book.addRow("GearRepairs", { ...WHOLE, ...change });
  return ofRule(book.snapshot, "repair-incomplete").map(({ column, message, weight }) => {
    expect(weight).toBe("query");
    return `${column}: ${message}`;
  });
};

test.each(["Sheet", "Row", "Cause", "Work on", "What was done", "Repaired by", "Date"])(
  "repair-incomplete finds a repair without its %s",
  (header) => {
    expect(told({ [header]: null })).toEqual([
      expect.stringMatching(new RegExp(`^${header}: .*has no "${header}"`)),
    ]);
  },
);

test.each([
  ["a work of no list", { "Work on": "Paint" }, /^Work on: .*none of the list/],
  ["a day in the future", { Date: TODAY + 1 }, /^Date: .*in the future/],
  [
    "a day before the failed test",
    { Date: 46_339 },
    /^Date: .*before the failed test of 2026-11-14/,
  ],
  ["a text for a day", { Date: "soon" }, /^Date: .*has no "Date"/],
  ["a record that is not there", { Row: "=K0099 · Breaker Q0 · L1" }, /^Row: .*no such record/],
])("repair-incomplete finds %s", (_name, change, says) => {
  expect(told(change)).toEqual([expect.stringMatching(says)]);
});

test("repair-incomplete keeps quiet: a whole repair, and blank rows", () => {
  expect(told({})).toEqual([]);
  const book = sound();
  book.addRow("GearRepairs", {});
  expect(ofRule(book.snapshot, "repair-incomplete")).toEqual([]);
});
