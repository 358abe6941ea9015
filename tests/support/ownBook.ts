import { type CellValue, writeXlsx } from "hucre/xlsx";

const PANELS = Array.from({ length: 10 }, (_, at) => `C${String(at + 1).padStart(2, "0")}`);

/** Cells that are wrong on purpose, by what is wrong with them. */
export const FAULTS = {
  /** 0.8 GΩ where at least 5 GΩ is stated, and the line says OK. */
  belowLimit: "IR summary!C12",
  /** No reading, and the line says OK. */
  blank: "IR summary!D14",
  /** The one typed value in a column of formulas. */
  typedOver: "Contacts!E7",
} as const;

const IR = PANELS.map((panel, at): CellValue[] => [
  panel,
  at === 3 ? 11.8 : 12.5 + at,
  panel === "C07" ? 0.8 : 13.1 + at,
  panel === "C09" ? null : 12.9 + at,
  "OK",
]);

const CONTACTS = PANELS.map((panel, at): CellValue[] => [
  panel,
  40 + (at % 4),
  41 + (at % 3),
  42 + (at % 5),
]);
const TITLES = ["Cubicle", "L1 (µΩ)", "L2 (µΩ)", "L3 (µΩ)", "Highest (µΩ)"];

const highest = (row: number) =>
  row === 6
    ? { value: 44 }
    : {
        formula: `MAX(B${row + 1}:D${row + 1})`,
        formulaResult: Math.max(...(CONTACTS[row - 1] ?? []).slice(1).map(Number)),
      };

/**
 * A workbook as somebody keeps it who does not know of Gearproof: a sheet with a head of two rows and joined
 * cells, and a sheet with an Excel table and formulas (an invented works).
 */
export const ownBook = (): Promise<Uint8Array> =>
  writeXlsx({
    sheets: [
      {
        name: "IR summary",
        rows: [
          ["Invented works: 15 kV switchgear, acceptance tests to NETA"],
          ["Insulation resistance, 2.5 kV DC, 1 min, at least 5 GΩ"],
          [],
          ["Cubicle", "Phase to earth, GΩ", null, null, "Result"],
          [null, "L1-E", "L2-E", "L3-E", null],
          ...IR,
        ],
        merges: [
          { startRow: 3, startCol: 0, endRow: 4, endCol: 0 },
          { startRow: 3, startCol: 1, endRow: 3, endCol: 3 },
          { startRow: 3, startCol: 4, endRow: 4, endCol: 4 },
        ],
      },
      {
        name: "Contacts",
        rows: [TITLES, ...CONTACTS],
        cells: new Map(CONTACTS.map((_, at) => [`${at + 1},4`, highest(at + 1)])),
        tables: [{ name: "Contacts", range: "A1:E11", columns: TITLES.map((name) => ({ name })) }],
      },
    ],
  });
