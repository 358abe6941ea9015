import { expect, test } from "vitest";
import type { Finding } from "../../../src/check/findings/finding";
import { gatherFindings } from "../../../src/check/findings/gatherFindings";
import { RULES } from "../../../src/check/rules";
import { TEXT } from "../../support/checkBook";
import { CONTACT, ofRule, sound } from "../support";

const lacking = (panel: string, row: number, rule = "missing-trail"): Finding => ({
  rule,
  weight: "query",
  panel,
  sheet: "Contacts",
  address: `P${row}`,
  row: `${panel} · ${row}`,
  column: "Date",
  message: `${panel} · ${row}: Date not recorded.`,
});

const reachOf = (rule: string) => RULES.find(({ id }) => id === rule)?.reach;
const none = () => false;
const told = (findings: readonly Finding[], standsApart: (one: Finding) => boolean = none) =>
  gatherFindings(findings, TEXT, reachOf, standsApart).map(({ address, found, further }) => ({
    address,
    found,
    further,
  }));

test("what one panel lacks is one finding with its list, and what another lacks another", () => {
  expect(told([lacking("A", 5), lacking("A", 6), lacking("B", 8)])).toEqual([
    { address: "P5", found: "× 2", further: ["P6"] },
    { address: "P8", found: undefined, further: undefined },
  ]);
});

test("twenty of a sort are one finding, whatever panels they are of", () => {
  const rows = Array.from({ length: 20 }, (_, at) => lacking(`=H${at}`, 5 + at));
  expect(told(rows)).toEqual([
    { address: "P5", found: "× 20", further: rows.slice(1).map(({ address }) => address) },
  ]);
  expect(told(rows.slice(1))).toHaveLength(19);
});

test("a defect is told at each row, and what was accepted by itself stands by itself", () => {
  const rows = [5, 6, 7].map((row) => lacking("A", row));
  expect(told(rows.map((one) => ({ ...one, rule: "out-of-limits" })))).toHaveLength(3);
  expect(told(rows, ({ address }) => address === "P6").map(({ address }) => address)).toEqual([
    "P5",
    "P6",
  ]);
});

test("a renamed row is told by its name alone, not as a missing row nor by what another name would have", () => {
  const book = sound();
  book.set(CONTACT, 1, "Pole", "L9");
  expect(ofRule(book.snapshot, "key-changed")).toHaveLength(1);
  for (const rule of ["missing-row", "given-differs", "limit-differs"])
    expect(ofRule(book.snapshot, rule)).toEqual([]);
});
