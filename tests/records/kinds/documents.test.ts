import { expect, test } from "vitest";
import { documents } from "../../../src/records/kinds/documents";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf, workingOf } from "../../support/rowOf";

const lineup = longLineup(1);

test("a row for the specification and for each drawing", () => {
  const { project } = sampleLineup();
  expect(documents.rows(sampleLineup()).map(({ part }) => part)).toEqual([
    project.specification,
    "INV-E-1001",
    "INV-E-1010",
    "INV-E-1044",
  ]);
});

// The approved revision of the drawing is A.
test.each([
  [{ found: "A" }, "Pass"],
  [{ found: " a " }, "Pass"],
  [{ found: "B" }, "Fail"],
  [{ found: "  " }, "Missing"],
  [{ found: "Rev. A" }, "Pass"],
  [{ found: "rev-A" }, "Pass"],
  [{ found: "A1" }, "Fail"],
] as const)("%o: %s", (entries, verdict) => {
  expect(rowOf(documents, lineup, entries, "INV-1").result).toBe(verdict);
});

test("where the lineup gives no approved revision, nothing is judged until it is typed", () => {
  const part = "INV-SPEC (invented)";
  expect(rowOf(documents, lineup, { found: "2" }, part).result).toBe("Inconclusive");
  expect(rowOf(documents, lineup, { found: "2", approved: 2 }, part).result).toBe("Pass");
});

test("a revision typed over the approved one is not taken", () => {
  const row = rowOf(documents, lineup, { found: "B", approved: "B" }, "INV-1");
  expect(row).toMatchObject({ approved: "A", result: "Fail" });
  expect(workingOf(documents, "current", row, lineup)).toBe("on site B, approved A: another");
});

// Numbers with zeros or an R before them are a way of writing it; a point is another revision. Common practice, no source.
test.each([
  ["03", "Pass"],
  ["Rev. 03", "Pass"],
  ["R3", "Pass"],
  ["3.1", "Fail"],
  ["30", "Fail"],
])("of revision 3, %s on site: %s", (found, verdict) => {
  expect(rowOf(documents, lineup, { found, approved: 3 }, "INV-SPEC (invented)").result).toBe(
    verdict,
  );
});
