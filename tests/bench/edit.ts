import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { check, recheck } from "../support/checkBook";
import { faultBook } from "../support/faultBook";
import { filledPlan, SOUND } from "../support/fill";
import { longLineup } from "../support/lineups";

/**
 * `npm run bench:edit [rows]`: a workbook of so many record rows (10,000), one reading edited: the recheck
 * over a whole check of the same snapshot, the least of five runs each.
 */
const rows = Number(process.argv[2] ?? 10_000);
const ROWS_PER_PANEL = 73;
const TODAY = 46_352;
const book = faultBook(
  filledPlan(longLineup(Math.round(rows / ROWS_PER_PANEL)), 5, {
    ...SOUND,
    GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
  }),
  TODAY,
);
const count = Object.values(book.report.counts).reduce((sum, one) => sum + one, 0);

const edited = (name: string, header: string, value: number): Snapshot => ({
  ...book.snapshot,
  sheets: book.snapshot.sheets.map((sheet) => ({
    ...sheet,
    tables: sheet.tables.map((table): TableSnapshot => {
      if (table.name !== name) return table;
      const column = table.headers.indexOf(header);
      const at = table.rowCount >> 1;
      return {
        ...table,
        cell: (row, one) => (row === at && one === column ? value : table.cell(row, one)),
      };
    }),
  })),
});

const least = (run: () => void): number =>
  Math.min(
    ...Array.from({ length: 5 }, () => {
      const start = performance.now();
      run();
      return performance.now() - start;
    }),
  );

process.stdout.write(`${count} rows\n`);
for (const [name, header, value] of [
  ["GearTorque", "Applied N·m", 61],
  ["GearControl", "R MΩ read", 700],
  ["GearInsulation", "R 1 min MΩ", 150_000],
  ["GearContact", "R µΩ", 31.5],
] as const) {
  const snapshot = edited(name, header, value);
  const whole = least(() => check(snapshot, TODAY));
  const again = least(() => recheck(book.report, snapshot));
  process.stdout.write(
    `${name.padEnd(16)} whole check ${whole.toFixed(0).padStart(5)} ms, recheck ${again.toFixed(1).padStart(6)} ms: ${(again / whole).toFixed(3)} of it\n`,
  );
}
