import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { Row } from "../../../src/records/kind";
import { torque } from "../../../src/records/kinds/torque";
import { longLineup } from "../../support/lineups";

const lineup = longLineup(1);
const DONE = { marked: "Yes", rechecked: "Yes" };
const row = (entries: Row, of = lineup) =>
  evaluate(
    torque,
    [{ object: "=K0001", part: "Busbar", bolt: "M12", grade: "8.8", ...entries }],
    of,
  )[0];

test("a row for each group of joints of a panel; panels without joints give none", () => {
  const [panel] = lineup.panels;
  if (!panel) throw new Error("no panel");
  expect(torque.rows({ ...lineup, panels: [{ ...panel, joints: [] }] })).toEqual([]);
  expect(torque.rows(lineup).map(({ part }) => part)).toEqual(panel.joints.map(({ name }) => name));
});

test("the maker's torque comes first; without it a computed one, inside gear makers' range for M12 (50 to 70 N·m, read), stands beside the row and accepts nothing", () => {
  const own = row({ makersNm: 60, document: "invented sheet" });
  expect([own?.required, String(own?.sources)]).toEqual([
    60,
    expect.stringContaining("required: invented sheet (maker)"),
  ]);
  const computed = row({ makersNm: null });
  expect(computed?.computedNm).toBeGreaterThan(50);
  expect(computed?.computedNm).toBeLessThan(70);
  expect(computed?.required).toBeNull();
  expect(computed?.sources).toContain("a computed one accepts nothing");
  expect(row({ makersNm: null, applied: 66, ...DONE })?.result).toBe("Inconclusive");
});

// ± 10 %: common practice.
test.each([
  [60, {}, "Pass"],
  [66, {}, "Pass"],
  [66.1, {}, "Fail"],
  [53.9, {}, "Fail"],
  [60, { marked: "No" }, "Fail"],
  [60, { rechecked: null }, "Inconclusive"],
  [44, { rechecked: null }, "Fail"],
  [44, { marked: null, rechecked: null }, "Fail"],
  ["60 N·m", {}, "Pass"],
  ["44.3 lbf·ft", {}, "Pass"],
  ["60 lbf·in", {}, "Fail"],
  ["60 kV", {}, "Inconclusive"],
  [null, {}, "Missing"],
] as const)("60 N·m required, %s applied, %o: %s", (applied, other, verdict) => {
  expect(row({ makersNm: 60, applied, ...DONE, ...other })?.result).toBe(verdict);
});

test("the project's own tolerance comes first", () => {
  const own = longLineup(1, {
    criteria: [{ from: "project", quantity: "torque tolerance %", value: 4, document: "invented" }],
  });
  expect(row({ makersNm: 60, applied: 63, ...DONE }, own)?.result).toBe("Fail");
});

// ANSI/NETA table 100.12.1 (memory); 1 lbf·ft = 1.355818 N·m (NIST SP 811).
test("American practice: the table by size and grade where the maker says nothing; never for metric bolts", () => {
  const inch = { makersNm: null, bolt: "1/2", grade: "SAE 5", ...DONE };
  expect(row({ ...inch, applied: "48 lbf·ft" })).toMatchObject({ result: "Pass" });
  expect(row({ ...inch, applied: "48 lbf·ft" })?.requiredLbfFt).toBeCloseTo(48, 6);
  expect(row({ ...inch, grade: "SAE 2", applied: "48 lbf·ft" })?.result).toBe("Fail");
  expect(row({ ...inch, grade: "A2-70", applied: "48 lbf·ft" })?.result).toBe("Inconclusive");
  expect(row({ ...inch, applied: "48 lbf·ft" }, longLineup(1, { basis: "IEC" }))?.result).toBe(
    "Inconclusive",
  );
});

test("the project's torque serves where the joint has none of its maker's", () => {
  const own = longLineup(1, {
    criteria: [{ from: "project", quantity: "torque lbf·ft", value: 50, document: "invented" }],
  });
  expect(row({ makersNm: null, applied: 68, ...DONE }, own)).toMatchObject({ result: "Pass" });
  expect(row({ makersNm: 60, applied: 68, ...DONE }, own)).toMatchObject({ result: "Fail" });
});
