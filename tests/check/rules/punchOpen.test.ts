import { expect, test } from "vitest";
import type { CellValue } from "../../../src/records/kind";
import { reportOf } from "../../support/checkBook";
import { sound, TODAY } from "../support";

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
