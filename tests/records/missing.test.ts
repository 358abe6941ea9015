import fc from "fast-check";
import { expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import { isBlank, isNeeded, type RecordKind, type Row } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { filledPlan, SOUND } from "../support/fill";
import { EARTH_BAR, equipped, longLineup } from "../support/lineups";

const lineup = equipped(longLineup(3, { criteria: [EARTH_BAR] }));
const plan = filledPlan(lineup, 11, {
  ...SOUND,
  GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
});
const rowsOf = (kind: RecordKind): readonly Row[] =>
  plan.sheets.find(({ table }) => table === kind.table)?.rows ?? [];

/** What a passing row holds that its judgement needs: readings, conditions and words. */
const heldBy = (kind: RecordKind, row: Row): string[] =>
  kind.columns
    .filter(({ need }) => need === "reading" || need === "condition")
    .filter((column) => !isBlank(row[column.id]) && isNeeded(column, row, lineup))
    .map(({ id }) => id);

const CASES = KINDS.flatMap((kind) => {
  const rows = rowsOf(kind);
  const judged = evaluate(kind, rows, lineup);
  const at = judged.findIndex((row) => row.result === "Pass" && heldBy(kind, row).length > 0);
  return at < 0 ? [] : [{ kind, rows, at, held: heldBy(kind, judged[at] as Row) }];
});

test("most record kinds have a row that passes and needs something", () => {
  expect(CASES.length).toBeGreaterThan(16);
});

test.each(CASES)(
  "$kind.id: no row passes without what its judgement needs",
  ({ kind, rows, at, held }) => {
    fc.assert(
      fc.property(fc.subarray(held, { minLength: 1 }), (missing) => {
        const without = Object.fromEntries(missing.map((id) => [id, null]));
        const changed = rows.map((row, index) => (index === at ? { ...row, ...without } : row));
        const judged = evaluate(kind, changed, lineup)[at] as Row;
        // What is left may do without it, as a surface's temperature in dry air.
        const asked = kind.columns.some(
          (column) => missing.includes(column.id) && isNeeded(column, judged, lineup),
        );
        if (asked) expect(judged.result, missing.join(", ")).not.toBe("Pass");
      }),
      { numRuns: 40 },
    );
  },
);
