import { expect, test } from "vitest";
import {
  builtNow,
  memoryXml,
  readMemoryXml,
  readRememberedXml,
  rememberedXml,
} from "../../src/memory/memory";
import type { Remembered } from "../../src/sheets/kept/remembered";
import { longLineup } from "../support/lineups";

const remembered: Remembered = {
  mappings: [
    {
      name: 'crew 2 <"&">',
      fingerprint: ["panel", "r1"],
      columns: { R1: "reading" },
      decimal: ",",
      dateOrder: "day-first",
      shape: "wide",
      means: { object: { "Feld 1": "=H01" } },
    },
  ],
  last: {
    on: 46_400,
    files: ["a.csv"],
    cells: [
      { table: "T", key: "=H01 · L1", row: 0, column: "reading", old: null, value: "> 2 TΩ" },
    ],
    history: [],
  },
  maps: [{ sheet: "IR", kind: "insulation", titles: 4, columns: { Bay: "object" } }],
  words: { object: ["Schakelveld"] },
  survey: {
    on: 46_400,
    ratedkV: 15,
    basis: "NETA",
    corrections: [{ sheet: "IR", address: "C5", of: "column", is: "reading" }],
  },
};

test("what is remembered comes back, beside the lineup and apart from it", () => {
  const xml = rememberedXml(remembered);
  expect(readRememberedXml(xml)).toEqual(remembered);
  expect(readMemoryXml(xml)).toBeUndefined();
  expect(readRememberedXml(memoryXml({ lineup: longLineup(1) }))).toBeUndefined();
});

test("two intakes of 20,000 cells each come back, and stay far below what Excel on the web gives at once", () => {
  const cells = Array.from({ length: 20_000 }, (_, row) => ({
    table: "GearInsulation",
    key: `=K${String(row).padStart(4, "0")} · Circuit · L1-E · before`,
    row,
    column: "reading",
    old: row % 3 === 0 ? null : 90_000 + ((row * 7919) % 10_007),
    value: 120_000 + ((row * 104_729) % 100_003),
  }));
  const intake = { on: 46_400, files: ["ä.csv"], cells, history: [] };
  const xml = rememberedXml({ ...remembered, last: intake, before: intake });
  expect(readRememberedXml(xml)).toEqual({ ...remembered, last: intake, before: intake });
  expect(xml.length).toBeLessThan(1_000_000);
});

test("a part that is spoilt costs no other, and what is unknown is passed over", () => {
  const spoilt = rememberedXml({ ...remembered, last: { on: "x" } as never });
  expect(readRememberedXml(spoilt)).toMatchObject({ mappings: remembered.mappings });
  const later = rememberedXml({ ...remembered, more: 1 } as never);
  expect(readRememberedXml(later)).toEqual(remembered);
  expect(readRememberedXml(rememberedXml({} as never))).toEqual({ mappings: [], maps: [] });
  expect(readRememberedXml('<gearproof xmlns="urn:gearproof:remembered:1">{</gearproof>')).toBe(
    undefined,
  );
  expect(
    readRememberedXml('<gearproof xmlns="urn:gearproof:remembered:1">deflate:@@</gearproof>'),
  ).toBe(undefined);
});

test("the formulas that a build wrote are remembered with its lineup, and a workbook that has none is read as before", () => {
  const lineup = longLineup(2);
  const { formulas } = builtNow(lineup);
  expect(readMemoryXml(memoryXml({ lineup, formulas }))?.formulas).toEqual(formulas);
  expect(formulas?.size).toBeGreaterThan(100);
  expect(readMemoryXml(memoryXml({ lineup }))?.formulas).toBeUndefined();
  expect(builtNow(longLineup(2, { basis: "IEC" })).formulas).not.toEqual(formulas);
});
