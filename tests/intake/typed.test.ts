import fc from "fast-check";
import { writeCsv } from "hucre/csv";
import { expect, test } from "vitest";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import type { Row } from "../../src/records/kind";
import { planFor } from "../../src/sheets/plan/plan";
import { refill } from "../../src/sheets/plan/refill";
import { recordTables } from "../../src/sheets/recordTable";
import { check } from "../support/checkBook";
import { english } from "../support/inWords";
import { longLineup } from "../support/lineups";
import { type MemoryBook, memoryBook } from "../support/memoryBook";

/** Readings taken in from an export come to the same findings as the same readings typed. */

const TABLE = "GearInsulation";
const lineup = longLineup(2);
const plan = planFor(lineup);
const keys = plan.sheets.find(({ table }) => table === TABLE)?.rows ?? [];

const entry = fc.record({
  reading: fc.oneof(
    fc.constant(null),
    fc.integer({ min: 1, max: 3_000_000 }),
    fc.constantFrom("> 2 TΩ", "> 200 GΩ", "< 5 MΩ", "5.25 GΩ"),
  ),
  temperature: fc.oneof(fc.constant(null), fc.integer({ min: -20, max: 110 })),
  testVoltage: fc.constantFrom(5000, 2500, 1000, null),
  humidity: fc.oneof(fc.constant(null), fc.integer({ min: 20, max: 95 })),
});
type Entry = typeof entry extends fc.Arbitrary<infer T> ? T : never;

const HEADERS = [
  "Panel",
  "Part",
  "Combination",
  "Stage",
  "R 1 min (MΩ)",
  "Temperature (°C)",
  "Test voltage (V)",
  "Humidity (%)",
];

const findings = (book: MemoryBook) => {
  const checked = check(book.snapshot, 46_400);
  if (!checked.ok) throw new Error(checked.reason);
  return { counts: checked.report.counts, findings: checked.report.findings };
};

test("intake then check equals check on typed readings", () => {
  fc.assert(
    fc.property(fc.array(entry, { minLength: keys.length, maxLength: keys.length }), (entries) => {
      const given = (at: number): Entry => entries[at] as Entry;
      // A line without its reading is not taken in, so such a row is left blank when typed too.
      const typed = memoryBook({
        ...plan,
        sheets: plan.sheets.map((sheet) =>
          sheet.table === TABLE
            ? {
                ...sheet,
                rows: sheet.rows.map((row, at): Row => {
                  const { reading, ...conditions } = given(at);
                  if (reading === null) return row;
                  return {
                    ...row,
                    ...conditions,
                    reading: reading === "5.25 GΩ" ? 5250 : reading,
                  };
                }),
              }
            : sheet,
        ),
      });

      const lines = keys.flatMap((row, at) => {
        const { reading, temperature, testVoltage, humidity } = given(at);
        return reading === null
          ? []
          : [
              [
                row.object ?? null,
                row.part ?? null,
                row.combination ?? null,
                row.stage ?? null,
                reading,
                temperature,
                testVoltage,
                humidity,
              ],
            ];
      });
      const taken = memoryBook(plan);
      if (lines.length > 0) {
        const exported = readExport(writeCsv([HEADERS, ...lines]), {
          name: "made.csv",
          decimal: ".",
        });
        if (!exported.ok) throw new Error(exported.say(english));
        const tables = recordTables(taken.snapshot);
        const { placed, unplaced, conflicts } = placeReadings(exported.value, tables, {
          replace: false,
        });
        expect([unplaced, conflicts]).toEqual([[], []]);
        const table = tables.find(({ table }) => table.name === TABLE);
        if (!table) throw new Error("no table");
        const cells = placed.filter(({ column }) => column !== "origin");
        for (const { row, column, value, formula } of refill(table, cells, lineup))
          taken.set(TABLE, row, table.table.headers[column] ?? "", value, formula);
      }
      expect(findings(taken)).toEqual(findings(typed));
    }),
    { numRuns: 30 },
  );
});
