import { expect, test } from "vitest";
import type { CellValue } from "../../../src/records/kind";
import { reportOf } from "../../support/checkBook";
import { CONTACT, sound, TODAY } from "../support";

type Cells = Readonly<Record<string, CellValue>>;
const PUNCH = "GearPunchList";
const ITEM = { What: "Door scratched", Panel: "=K0002", Severity: "note", State: "Open" };
const CLOSED = {
  State: "Closed",
  "Closing note": "painted, A. Crew",
  Raised: TODAY - 9,
  Closed: TODAY - 2,
};
const ACCEPTED = { State: "Accepted", "Closing note": "as it is, E. Engineer", Owner: "A. Crew" };
const told = (table: string, cells: Cells, isFinal = false) => {
  const book = sound();
  book.addRow(table, cells);
  return reportOf(book.snapshot, TODAY, isFinal)
    .findings.filter(({ rule }) => rule === "list-odd")
    .map(({ weight, column, message }) => [weight, column, message]);
};

test.each<[name: string, cells: Cells, column: string, says: RegExp]>([
  [
    "closed before it was raised",
    { ...CLOSED, Closed: TODAY - 10 },
    "Closed",
    /before "Raised" of/,
  ],
  ["closed on a day to come", { ...CLOSED, Closed: TODAY + 3 }, "Closed", /in the future/],
  ["raised on a day to come", { Raised: TODAY + 1 }, "Raised", /in the future/],
  ["closed without a day", { ...CLOSED, Closed: null }, "Closed", /has no closing date/],
  [
    "closed without a note",
    { ...CLOSED, "Closing note": " " },
    "Closing note",
    /without a closing/,
  ],
  ["in a state of nobody's", { State: "in hand" }, "State", /Open, Closed, Accepted/],
  [
    "accepted by its owner",
    { ...ACCEPTED, "Closing note": "as it is, a. crew" },
    "Owner",
    /Somebody else/,
  ],
  ["of a panel that is not there", { Panel: "=K0002; =K0077" }, "Panel", /"=K0077"/],
])("list-odd finds an item %s", (_name, cells, column, says) => {
  expect(told(PUNCH, { ...ITEM, ...cells })).toEqual([
    ["query", column, expect.stringMatching(says)],
  ]);
});

test("list-odd keeps quiet: of items in order, of the check's own, of the whole lineup, and of what another rule asks at hand-over", () => {
  const quiet: Cells[] = [
    {},
    CLOSED,
    { ...CLOSED, Closed: TODAY - 9 },
    ACCEPTED,
    { Panel: "all panels" },
    { Panel: `=K0001, ${sound().snapshot.lineup?.panels[0]?.section}` },
    { Panel: null },
    { State: null },
    { State: null, Rule: "out-of-limits" },
  ];
  for (const cells of quiet) expect(told(PUNCH, { ...ITEM, ...cells })).toEqual([]);
  expect(told(PUNCH, { ...ITEM, ...CLOSED, "Closing note": null }, true)).toEqual([]);
});

const ENTRY = {
  Sheet: "Contacts",
  Row: "=K0001 · Breaker Q0 · L1",
  Column: "R µΩ",
  Value: 41,
  Date: TODAY - 8 + 0.4,
  Source: `${CONTACT}.csv line 2`,
  "Replaced on": TODAY - 8,
};

test("list-odd finds a reading that was replaced before it was taken, or on a day to come", () => {
  const history = (cells: Cells) => told("GearHistory", { ...ENTRY, ...cells });
  expect(history({})).toEqual([]);
  expect(history({ Date: null })).toEqual([]);
  expect(history({ "Replaced on": TODAY - 9 })).toEqual([
    ["query", "Replaced on", expect.stringMatching(/before "Date" of/)],
  ]);
  expect(history({ "Replaced on": TODAY + 5 })).toEqual([
    ["query", "Replaced on", expect.stringMatching(/in the future/)],
  ]);
});
