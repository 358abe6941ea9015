import { expect, test } from "vitest";
import { overRows } from "../../src/check/context";
import { RULES } from "../../src/check/rules";
import type { CellValue } from "../../src/records/kind";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { reportOf } from "../support/checkBook";
import { filledPlan, WILD } from "../support/fill";
import { equipped, longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";
import { pick, random } from "../support/random";

const ODD: readonly CellValue[] = [
  null,
  "about 5",
  "> 5",
  0,
  -1,
  1e7,
  46_900,
  "#REF!",
  "n/a",
  "XX-9",
];

/** The same workbook with every tenth cell of its tables another, and every fortieth formula gone. */
function scrambled(snapshot: Snapshot, start: number): Snapshot {
  const next = random(start);
  const sheets = snapshot.sheets.map((sheet) => ({
    ...sheet,
    tables: sheet.tables.map((table): TableSnapshot => {
      const cells = Array.from({ length: table.rowCount }, (_, row) =>
        table.headers.map((_header, column) =>
          next() < 0.1
            ? { value: pick(next, ODD), formula: next() < 0.5 ? undefined : "B6*2" }
            : {
                value: table.cell(row, column),
                formula: next() < 0.025 ? undefined : table.formula(row, column),
              },
        ),
      );
      return {
        ...table,
        cell: (row, column) => cells[row]?.[column]?.value ?? null,
        formula: (row, column) => cells[row]?.[column]?.formula,
      };
    }),
  }));
  return { ...snapshot, sheets };
}

const lineup = equipped(longLineup(4));
const ranged = {
  ...lineup,
  instruments: [{ id: "XX-9", kind: "Tester", ranges: [{ most: 1, unit: "MΩ" as const }] }],
};

const reports = [1, 2, 3].map((start) =>
  reportOf(scrambled(memoryBook(filledPlan(ranged, start, WILD)).snapshot, start), 46_400),
);

for (const rule of RULES)
  if (rule.reads === "row")
    test(`${rule.id} finds down its columns what it finds looking into every row`, () => {
      let told = 0;
      for (const { context } of reports)
        for (const table of context.tables) {
          if (rule.of?.(table.kind) === false) continue;
          const look = rule.rows(table, context);
          const all = overRows(table, look, [...table.rows.keys()]);
          expect(overRows(table, look, rule.among(table, context))).toEqual(all);
          told += all.length;
        }
      expect(told).toBeGreaterThan(0);
    });
