import { expect, test } from "vitest";
import type { CellValue } from "../../src/records/kind";
import { sampleLineup } from "../support/lineups";
import { checkedSheet } from "./support";

/** An invented sheet of somebody's own, of which one column and two records are never there. */
const lineup = sampleLineup();
const [core] = lineup.panels[0]?.currentTransformers ?? [];
if (!core) throw new Error("the sample lineup's first panel has current transformers");
const read = core.secondaryA * 1.0012;
const ROWS: readonly (readonly CellValue[])[] = [
  ["Panel", "Part", "Pole", "R (µΩ)", "Current (A)", "Date", "Tested by", "Instrument"],
  ...["L1", "L2", "L3"].map((pole) => ["H01", "Q0", pole, 31, 200, 46_330, "A. Crew", "R-9"]),
];

const foundBy = (rows: readonly (readonly CellValue[])[]) => {
  const { findings } = checkedSheet(lineup, rows);
  return (rule: string) =>
    findings
      .filter((one) => one.rule === rule && one.sheet === "Poles")
      .map(({ address, message }) => `${address} ${message}`);
};

test("a condition that the layout has no column for is said once for its block", () => {
  expect(foundBy(ROWS)("missing-condition")).toEqual([
    expect.stringMatching(
      /^D2 =H01 · Breaker Q0 · L1, and every other line of the block: reading recorded without "Conductor °C"/,
    ),
  ]);
});

test("records that no line is are said once for each part of a panel", () => {
  const found = foundBy(ROWS)("missing-row");
  expect(found.filter((one) => one.includes("=H02 · Breaker Q0"))).toEqual([
    expect.stringMatching(
      /^A1 =H02 · Breaker Q0: the lineup needs 3 records: L1, L2, L3, and no line/,
    ),
  ]);
  expect(found.filter((one) => one.includes("=H01 · Breaker Q0"))).toEqual([]);
});

test("a reading that one line lacks is said at its cell", () => {
  const rows = ROWS.map((row, at) =>
    at === 2 ? row.map((cell) => (cell === 31 ? null : cell)) : row,
  );
  expect(foundBy(rows)("missing-reading")).toEqual([
    "D3 =H01 · Breaker Q0 · L2: R µΩ not recorded.",
  ]);
});

test("an error of ratio that the row's own readings do not come to is said, as far as it is not rounding", () => {
  // Sample lineup: =H01, core 1S1-1S2. Ratio error as IEC 61869-1 defines it (from memory): (K·Is − Ip) / Ip × 100.
  const found = (stated: readonly number[]) =>
    foundBy([
      ["Panel", "Core", "Phase", "Primary injected (A)", "Secondary A", "Ratio error %"],
      ...stated.map((error, at) => ["H01", core.name, `L${at + 1}`, core.primaryA, read, error]),
    ])("stated-differs");
  expect(found([0.1, 0.1, 0.12])).toEqual([]);
  expect(found([0.1, -0.9, 0.1])).toEqual([
    expect.stringMatching(/^F3 .*"Ratio error %" is -0\.9 on the sheet; .* it is 0\.12/),
  ]);
});
