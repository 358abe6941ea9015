import { expect, test } from "vitest";
import { rowFinder } from "../../../src/intake/rows/rowFinder";
import { cable } from "../../../src/records/kinds/cable";
import { insulation } from "../../../src/records/kinds/insulation";
import { withstand } from "../../../src/records/kinds/withstand";
import { rowsOf } from "../../../src/records/rowsOf";
import { english } from "../../support/inWords";
import { equipped, longLineup, sampleLineup } from "../../support/lineups";

const placed = (phases: [string, string, string], position: string, written: string[]) => {
  const lineup = longLineup(1, { phases });
  const table = { kind: insulation, rows: rowsOf(insulation, lineup) };
  const find = rowFinder([table], written);
  const found = find({ object: "=K0001", part: "Circuit", position, stage: "before" }, [table]);
  return found.ok ? table.rows[found.value.row]?.combination : found.say(english);
};

// A, B, C and R, Y, B are what phases are called in other practices than L1, L2, L3 (common practice).
test.each([
  [["A", "B", "C"], "B-E", ["B-E"], "B-E"],
  [["A", "B", "C"], "B-E", ["R-E", "Y-E", "B-E"], "C-E"],
  [["A", "B", "C"], "L2 to earth", ["L2 to earth"], "B-E"],
  [["R", "Y", "B"], "B-E", ["B-E"], "B-E"],
  [["R", "Y", "B"], "C-E", ["A-E", "C-E"], "B-E"],
  [["L1", "L2", "L3"], "C-E", ["A-E", "C-E"], "L3-E"],
] as const)("phases %j: %s among %j is the row %s", (phases, position, written, row) => {
  expect(placed([...phases], position, [...written])).toBe(row);
});

// A core or a phase is tested against earth, and exports write it so (common practice).
test.each([withstand, cable])("L1-E in an export is the phase L1 of $id", (kind) => {
  const table = { kind, rows: rowsOf(kind, equipped(sampleLineup())) };
  const [first] = table.rows.filter(({ phase }) => phase === "L2");
  const find = rowFinder([table], ["L2-E"]);
  const place = { object: String(first?.object), part: String(first?.part), stage: "" };
  const found = find({ ...place, position: "L2-E" }, [table]);
  expect(found.ok && table.rows[found.value.row]).toBe(first);
});
