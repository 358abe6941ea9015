import { expect, test } from "vitest";
import { installation } from "../../../src/records/kinds/installation";
import { longLineup, sampleLineup } from "../../support/lineups";
import { rowOf } from "../../support/rowOf";

const partsOf = (lineup: ReturnType<typeof sampleLineup>, object: string) =>
  installation
    .rows(lineup)
    .filter((row) => row.object === object)
    .map(({ part }) => String(part));

test("items by what stands in the panel", () => {
  const lineup = sampleLineup();
  const [feeder, riser] = [partsOf(lineup, "=H02"), partsOf(lineup, "=H06")];
  for (const item of ["Shutters", "Earthing switch", "Cables"]) {
    expect(feeder.some((part) => part.startsWith(item))).toBe(true);
    expect(riser.some((part) => part.startsWith(item))).toBe(false);
  }
  expect(riser).toContain("Anchored to the foundation");
});

test("the project's own items, by panel, section or type; one of a usual name stands in for it", () => {
  const lineup = {
    ...sampleLineup(),
    checkItems: [
      { kind: "installation" as const, item: "Pit dry", types: ["riser" as const], document: "X" },
      { kind: "installation" as const, item: "Plinth", applies: ["=h02", "Bus B"], document: "X" },
      { kind: "installation" as const, item: "clean and dry", document: "X 4.2" },
    ],
  };
  expect(partsOf(lineup, "=H06")).toContain("Pit dry");
  expect(partsOf(lineup, "=H02")).not.toContain("Pit dry");
  expect(["=H01", "=H02", "=H07"].map((one) => partsOf(lineup, one).includes("Plinth"))).toEqual([
    false,
    true,
    true,
  ]);
  expect(partsOf(lineup, "=H01")).toContain("clean and dry");
  expect(partsOf(lineup, "=H01")).not.toContain("Clean and dry");
});

test.each([
  ["OK", "Pass"],
  ["ok", "Pass"],
  ["Not OK", "Fail"],
  ["Not applicable", "Not required"],
  ["later", "Inconclusive"],
  ["", "Missing"],
] as const)("%s: %s", (state, verdict) => {
  const fitted = "Heaters and lighting fitted";
  expect(rowOf(installation, longLineup(1), { state }, fitted).result).toBe(verdict);
});

// Common practice: every panel is to be clean and dry, and no tool stays in it.
test("what every panel is to be is never not applicable", () => {
  for (const part of ["Clean and dry", "Tools, spare and loose parts out"])
    expect(rowOf(installation, longLineup(1), { state: "Not applicable" }, part).result).toBe(
      "Inconclusive",
    );
});
