import { expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import type { CellValue, Row } from "../../src/records/kind";
import { timing } from "../../src/records/timing";
import { longLineup, sampleLineup } from "../support/lineups";

/** Closing 40 to 60 ms, opening 20 to 35 ms; the first breaker's poles within 2 ms, the second's not given. */
const lineup = longLineup(2);

const operation = (
  object: string,
  name: "closing" | "opening",
  times: readonly CellValue[],
  more: Row = {},
) =>
  evaluate(
    timing,
    timing
      .rows(lineup)
      .filter((row) => row.object === object && row.operation === name)
      .map((row, at) => ({ ...row, controlV: 110, reading: times[at] ?? null, ...more })),
    lineup,
  );
const results = (rows: readonly Row[]) => rows.map(({ result }) => result);

test("rows: closing and opening, each pole, of every breaker", () => {
  const rows = timing.rows(sampleLineup());
  expect(rows).toHaveLength(8 * 2 * 3);
  expect(rows[0]).toMatchObject({ part: "Breaker Q0 closing", pole: "L1", ratedV: 110 });
});

test("a pole out of the maker's window fails, on either side of it", () => {
  expect(results(operation("=K0001", "closing", [59.5, 60.5, 60]))).toEqual([
    "Pass",
    "Fail",
    "Pass",
  ]);
  expect(results(operation("=K0001", "opening", [19.5, 20, 20.5]))).toEqual([
    "Fail",
    "Pass",
    "Pass",
  ]);
});

test("poles further apart than the maker allows fail together", () => {
  const rows = operation("=K0001", "closing", [50, 51, 52.5]);
  expect(rows[0]).toMatchObject({ poleSpread: 2.5, spreadMost: 2 });
  expect(results(rows)).toEqual(["Fail", "Fail", "Fail"]);
});

test("where the maker says nothing: a quarter of a cycle on closing, a sixth on opening (IEC 62271-100, memory)", () => {
  const closing = operation("=K0002", "closing", [50, 51, 54.9]);
  expect(closing[0]?.spreadMost).toBe(5);
  expect(results(closing)).toEqual(["Pass", "Pass", "Pass"]);
  const opening = operation("=K0002", "opening", [25, 25, 28.4]);
  expect(opening[0]?.spreadMost).toBeCloseTo(20 / 6, 10);
  expect(results(opening)).toEqual(["Fail", "Fail", "Fail"]);
  expect(String(opening[0]?.sources)).toContain("IEC 62271-100");
});

test("until all three poles are in, and away from rated control voltage, nothing is judged", () => {
  expect(results(operation("=K0001", "closing", [50, 50, null]))).toEqual([
    "Inconclusive",
    "Inconclusive",
    "Missing",
  ]);
  const low = operation("=K0001", "closing", [50, 50, 50], { controlV: 100 });
  expect(results(low)).toEqual(["Inconclusive", "Inconclusive", "Inconclusive"]);
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
        .slice(0, 3)
        .map((row) => ({ ...row, controlV: 110, reading: 50, ...more })),
      bare,
    );
  expect(rows({})[0]).toMatchObject({
    result: "Inconclusive",
    sources: expect.stringContaining("most: none: give the maker's value"),
  });
  expect(rows({ least: 40, most: 60 })[0]?.result).toBe("Pass");
});

test("the counter is asked for once an operation", () => {
  const asked = timing.columns
    .filter(({ id }) => id.startsWith("counter"))
    .map(({ needed }) => timing.rows(lineup).filter((row) => needed?.(row, lineup)).length);
  expect(asked).toEqual([4, 4]);
});
