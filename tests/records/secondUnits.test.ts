import { expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import type { CellValue } from "../../src/records/kind";
import { kindFor } from "../../src/records/kindFor";
import { KINDS } from "../../src/records/kinds";
import { longLineup } from "../support/lineups";

const NETA = longLineup(1, { basis: "NETA" });
const IEC = longLineup(1, { basis: "IEC" });
const kindOf = (id: string, lineup = NETA) => {
  const kind = KINDS.find((one) => one.id === id);
  if (!kind) throw new Error(`no kind ${id}`);
  return kindFor(kind, lineup);
};

// NIST SP 811: t/°F = 1.8 t/°C + 32; 1 in = 25.4 mm; 1 psi = 6894.757 Pa; 1 inHg (0 °C) = 3386.389 Pa.
test.each([
  ["contact", "temperature", 25, "temperature°F", 77],
  ["contact", "temperature", "77 °F", "temperature°F", 77],
  ["contact", "temperature", "> 20", "temperature°F", null],
  ["contact", "temperature", null, "temperature°F", null],
  ["withstand", "surface", -40, "surface°F", -40],
  ["dimensions", "reading", 2540, "readinginch", 100],
  ["dimensions", "reading", "36 in", "readinginch", 36],
  ["gas", "reading", 0.5, "readingpsi", 72.519],
  ["withstand", "pressure", 101.325, "pressureinHg", 29.921],
  ["withstand", "pressure", "29.5 inHg", "pressureinHg", 29.5],
  ["gas", "reading", "70 psi", "readingpsi", 70],
] as readonly [string, string, CellValue, string, number | null][])(
  "%s: %s of %j reads %s %j beside it",
  (id, column, entry, beside, value) => {
    const kind = kindOf(id);
    const [row = {}] = evaluate(kind, [{ ...kind.rows(NETA)[0], [column]: entry }], NETA);
    if (value === null) expect(row[beside]).toBeNull();
    else expect(row[beside]).toBeCloseTo(value, 3);
  },
);

test("IEC has its own units alone, and the heads of American practice are no two alike", () => {
  for (const kind of KINDS) {
    expect(kindFor(kind, IEC)).toBe(kind);
    const heads = kindFor(kind, NETA).columns.map(({ header }) => header);
    expect(new Set(heads).size).toBe(heads.length);
  }
  expect(kindOf("contact").columns.map(({ header }) => header)).toContain("Conductor °F");
});
