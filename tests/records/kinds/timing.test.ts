import { expect, test } from "vitest";
import { evaluate } from "../../../src/records/evaluate";
import type { CellValue, Row } from "../../../src/records/kind";
import { timing } from "../../../src/records/kinds/timing";
import { longLineup, sampleLineup } from "../../support/lineups";
import { workingOf } from "../../support/rowOf";

/** Closing 40 to 60 ms, opening 20 to 35 ms; the first breaker's poles within 2 ms, the second's not given. */
const lineup = longLineup(2);

const operation = (
  object: string,
  name: "closing" | "opening",
  [l1 = null, l2 = null, l3 = null]: readonly CellValue[],
  more: Row = {},
) =>
  evaluate(
    timing,
    timing
      .rows(lineup)
      .filter((row) => row.object === object && row.operation === name)
      .map((row) => ({ ...row, controlV: 110, l1, l2, l3, ...more })),
    lineup,
  )[0] as Row;

test("rows: closing and opening of every breaker, its three poles side by side", () => {
  const rows = timing.rows(sampleLineup());
  expect(rows).toHaveLength(8 * 2);
  expect(rows[0]).toMatchObject({ part: "Breaker Q0 closing", ratedV: 110 });
});

test.each([
  ["closing", [59.5, 60, 60], "Pass"],
  ["closing", [59.5, 60.5, 60], "Fail"],
  ["opening", [20.5, 20, 20.5], "Pass"],
  ["opening", [20.5, 19.5, 20.5], "Fail"],
] as const)("maker's window, %s %j: %s", (name, times, verdict) => {
  expect(operation("=K0001", name, times).result).toBe(verdict);
});

test("poles further apart than the maker allows fail", () => {
  const row = operation("=K0001", "closing", [50, 51, 52.5]);
  expect(row).toMatchObject({ fastest: 50, slowest: 52.5, poleSpread: 2.5, spreadMost: 2 });
  expect(row.result).toBe("Fail");
  expect(workingOf(timing, "poleSpread", row, lineup)).toBe("slowest 52.5 − fastest 50 = 2.5 ms");
  expect(workingOf(timing, "slowest", row, lineup)).toBe("most of L1 50, L2 51, L3 52.5 = 52.5 ms");
});

test("where the maker says nothing: a quarter of a cycle on closing, a sixth on opening (IEC 62271-100, memory)", () => {
  const closing = operation("=K0002", "closing", [50, 51, 54.9]);
  expect(closing).toMatchObject({ spreadMost: 5, result: "Pass" });
  const opening = operation("=K0002", "opening", [25, 25, 28.4]);
  expect(opening.spreadMost).toBeCloseTo(20 / 6, 10);
  expect(opening.result).toBe("Fail");
  expect(String(opening.sources)).toContain("IEC 62271-100");
});

test("until all three poles are in, and away from rated control voltage, nothing is judged", () => {
  expect(operation("=K0001", "closing", [50, 50, null]).result).toBe("Missing");
  expect(operation("=K0001", "closing", [50, 50, "50 ms"]).result).toBe("Pass");
  expect(operation("=K0001", "closing", [50, 50, "0.05 s"]).result).toBe("Pass");
  expect(operation("=K0001", "closing", [50, 50, "50 V"]).result).toBe("Inconclusive");
  expect(operation("=K0001", "closing", [50, 50, 50], { controlV: 100 }).result).toBe(
    "Inconclusive",
  );
});

test("without a window of the maker's there is nothing to judge by, until it is typed", () => {
  const bare = {
    ...lineup,
    panels: lineup.panels.map((panel) => ({
      ...panel,
      breaker: panel.breaker && { ...panel.breaker, closingMs: undefined },
    })),
  };
  const rows = (more: Row) =>
    evaluate(
      timing,
      timing
        .rows(bare)
        .slice(0, 1)
        .map((row) => ({ ...row, controlV: 110, l1: 50, l2: 50, l3: 50, ...more })),
      bare,
    );
  expect(rows({})[0]).toMatchObject({
    result: "Inconclusive",
    sources: expect.stringContaining("most: none given: type the value here"),
  });
  expect(rows({ least: 40, most: 60 })[0]?.result).toBe("Pass");
});
