import { expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import { evidenceOf } from "../../src/records/evidence";
import { type Row, verdictOf } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { insulation } from "../../src/records/kinds/insulation";
import { filledPlan } from "../support/fill";
import { EARTH_BAR, equipped, longLineup } from "../support/lineups";

const lineup = longLineup(1);

test("a record is worked out line by line, from what was read to what is judged", () => {
  const [first = {}] = insulation.rows(lineup);
  const [row = {}] = evaluate(
    insulation,
    [{ ...first, testVoltage: 2500, reading: 1200, temperature: 35 }],
    lineup,
  );
  const lines = evidenceOf(insulation, row, lineup);
  const line = (header: string, part?: string) =>
    lines.find((one) => one.header === header && (part === undefined || one.part === part));
  expect(line("R 1 min MΩ")).toMatchObject({ part: "entry", value: 1200, unit: "MΩ" });
  // ANSI/NETA table 100.14 (read): solid insulation at 35 °C has the factor 2.00.
  expect(line("R corrected MΩ", "worked")).toMatchObject({ value: 2400 });
  // ANSI/NETA table 100.1 (read): 15 kV class, 5000 MΩ.
  expect(line("R corrected MΩ", "judged")).toMatchObject({
    value: 2400,
    limit: 5000,
    sense: "least",
    decides: "acceptance",
    verdict: "Fail",
  });
  expect(line("Test V DC", "judged")).toMatchObject({ decides: "proof", verdict: "Pass" });
  expect(
    lines
      .map(({ part }) => part)
      .filter((part, at, all) => part !== all[at - 1])
      .at(-1),
  ).toBe("judged");
});

test("an entry that is missing stands there as missing", () => {
  const [row = {}] = evaluate(insulation, insulation.rows(lineup).slice(0, 1), lineup);
  const lines = evidenceOf(insulation, row, lineup);
  expect(
    lines.find(({ header, part }) => header === "R 1 min MΩ" && part === "entry"),
  ).toMatchObject({ value: null });
  expect(lines.some(({ part }) => part === "worked")).toBe(false);
});

const equippedLineup = equipped(longLineup(2, { criteria: [EARTH_BAR] }));
const plan = filledPlan(equippedLineup, 5);

test.each(KINDS.map((kind) => [kind.id, kind] as const))(
  "%s: what a row that passes is judged by is there, and each of it passes",
  (_id, kind) => {
    const rows = plan.sheets.find(({ table }) => table === kind.table)?.rows ?? [];
    for (const row of evaluate(kind, rows, equippedLineup).filter(passes))
      for (const line of evidenceOf(kind, row, equippedLineup))
        if (line.part === "judged") {
          expect([line.header, line.limit]).not.toEqual([line.header, null]);
          expect([line.header, line.verdict]).toEqual([line.header, "Pass"]);
        }
  },
);

const passes = (row: Row): boolean => verdictOf(row) === "Pass";
