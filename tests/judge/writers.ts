import { execFileSync } from "node:child_process";
import type { CellValue } from "../../src/records/kind";
import { readArea } from "../../src/sheets/cells/area";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { check } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { longLineup } from "../support/lineups";
import { python } from "./outside";

/** What openpyxl reads in a workbook. */
export type SheetRead = {
  readonly name: string;
  readonly hidden: boolean;
  /** From 1. */
  readonly hiddenRows: readonly number[];
  readonly tables: readonly { name: string; area: string; headers: readonly string[] }[];
  readonly arrays: readonly { area: string; formula: string }[];
  readonly cells: readonly [
    address: string,
    value: CellValue | { day: number },
    formula: string | null,
  ][];
};

/** Runs the script of other writers; gives what it says. */
export const otherWriter = (...args: string[]): string =>
  execFileSync(python(), ["tests/judge/otherWriters.py", ...args], {
    maxBuffer: 1 << 28,
    encoding: "utf8",
  });

/** Where our reading of a workbook differs from openpyxl's. */
export function readingDifferences({ sheets }: Snapshot, theirs: readonly SheetRead[]): string[] {
  const found: string[] = [];
  const expect = (what: string, ours: unknown, wanted: unknown) => {
    if (JSON.stringify(ours) !== JSON.stringify(wanted))
      found.push(`${what}: ${JSON.stringify(ours)} against ${JSON.stringify(wanted)}`);
  };
  expect(
    "sheets",
    sheets.map(({ name }) => name),
    theirs.map(({ name }) => name),
  );
  for (const [at, sheet] of theirs.entries()) {
    const ours = sheets[at];
    if (!ours) continue;
    expect(`${sheet.name} hidden`, Boolean(ours.hidden), sheet.hidden);
    expect(
      `${sheet.name} tables`,
      ours.tables.map(({ name, headers }) => ({ name, headers })),
      sheet.tables.map(({ name, headers }) => ({ name, headers })),
    );
    for (const [index, { area }] of sheet.tables.entries()) {
      const place = readArea(area);
      const table = ours.tables[index];
      expect(`${sheet.name}!${area}`, table && areaOf(table), place);
      expect(
        `${sheet.name}!${area} hidden rows`,
        [...(table?.hidden ?? [])].map((row) => row + 2 + (table?.top ?? 0)),
        sheet.hiddenRows.filter((row) => place && row - 1 > place.top && row - 1 <= place.bottom),
      );
    }
    for (const [address, value, written] of sheet.cells) {
      const { top = 0, left = 0 } = readArea(address) ?? {};
      const inArray = sheet.arrays.find(({ area }) => {
        const one = readArea(area);
        return one && top >= one.top && top <= one.bottom && left >= one.left && left <= one.right;
      });
      const formula = inArray?.formula ?? written ?? undefined;
      expect(`${sheet.name}!${address} formula`, ours.cells?.formula(top, left), formula);
      const cell = ours.cells?.cell(top, left) ?? null;
      const wanted = typeof value === "object" && value !== null ? value.day : value;
      if (!alike(cell, wanted)) found.push(`${sheet.name}!${address}: ${cell} against ${wanted}`);
    }
  }
  return found;
}

const areaOf = ({ top, left, rowCount, headers }: TableSnapshot) => ({
  top,
  left,
  bottom: top + rowCount,
  right: left + headers.length - 1,
});

/** Days of the file library are exact to the millisecond. */
const alike = (one: CellValue, other: CellValue) =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(1, Math.abs(other))
    : (one === "" ? null : one) === (other === "" ? null : other);

/** A small record workbook with a few faults in it. */
export const faultyPlan = () => {
  const plan = filledPlan(longLineup(2), 5, {
    ...SOUND,
    GearContact: (row, next) => ({
      ...SOUND.GearContact?.(row, next),
      ...(row.phase === "L2" ? { reading: 900, instrument: "X-9" } : {}),
    }),
  });
  return plan;
};

/** The day on which these workbooks are checked. */
export const TODAY = 46_400;

/** The findings of a workbook, one line each. */
export function findingsOf(snapshot: Snapshot): string[] {
  const checked = check(snapshot, TODAY);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report.findings.map(
    ({ rule, weight, sheet, address, message }) =>
      `${weight} ${rule} ${sheet}!${address}: ${message}`,
  );
}

/** A workbook as a program that cannot calculate saves it: formulas without their values. */
export const uncalculated = (snapshot: Snapshot): Snapshot => ({
  ...snapshot,
  lineup: undefined,
  sheets: snapshot.sheets.map((sheet) => ({
    ...sheet,
    tables: sheet.tables.map((table) => ({
      ...table,
      cell: (row: number, column: number) =>
        table.formula(row, column) === undefined ? table.cell(row, column) : null,
    })),
  })),
});
