import { type CellStyle, type CellValue, type WriteSheet, writeXlsx } from "hucre/xlsx";

/**
 * Two workbooks as people keep them who do not know of Gearproof. Layouts, names and readings are invented;
 * what is wrong in them on purpose is listed in `FOREIGN_FAULTS`.
 */
const INVENTED =
  "Invented for trying Gearproof: no such site, project, person or instrument exists.";

/** Cells that are wrong on purpose, and by which rule of the survey each is found. */
export const FOREIGN_FAULTS: Readonly<Record<string, readonly (readonly [string, string])[]>> = {
  "quay-test-sheets.xlsx": [
    // 0.9 GΩ where at least 2 GΩ is stated, and the line says OK.
    ["Insulation!C11", "survey-limit"],
    // No reading, and the line says OK.
    ["Insulation!G13", "survey-missing"],
    // The one typed value in a column of formulas.
    ["Contacts!E9", "survey-typed-over"],
    // 12 kV where 22.4 kV is stated.
    ["Withstand!C9", "survey-level"],
    // Used after its calibration ran out.
    ["Withstand!G7", "survey-calibration"],
  ],
  "mill-cubicle-forms.xlsx": [
    // 42 MΩ among tens of thousands: typed in GΩ under a title in MΩ.
    ["52-2!B13", "survey-unit-slip"],
    // 71 µΩ where at most 60 µΩ is stated, and the line says Pass.
    ["52-3!B22", "survey-limit"],
    // A discharge, and the line says Pass.
    ["52-4!D27", "survey-discharge"],
  ],
};

const day = (month: number, of: number): Date => new Date(Date.UTC(2026, month - 1, of));

const DATE: CellStyle = { numFmt: "yyyy-mm-dd" };
const HEAD: CellStyle = {
  font: { bold: true },
  fill: { type: "pattern", pattern: "solid", fgColor: { rgb: "DDE3EA" } },
  border: { bottom: { style: "thin" } },
  alignment: { wrapText: true, vertical: "center" },
};
const TITLE: CellStyle = { font: { bold: true, size: 14 } };

type Cells = NonNullable<WriteSheet["cells"]>;
type Formula = readonly [formula: string, result: number];
const isFormula = (cell: CellValue | Formula): cell is Formula => Array.isArray(cell);

/** A sheet of lines; those of `heads` (from 1) look like titles, days are written as days. */
const sheet = (
  name: string,
  lines: readonly (readonly (CellValue | Formula)[])[],
  heads: readonly number[],
  merges: WriteSheet["merges"] = [],
): WriteSheet => {
  const cells: Cells = new Map();
  for (const [row, line] of lines.entries())
    for (const [column, value] of line.entries()) {
      if (value === null && !heads.includes(row + 1)) continue;
      const style = row === 0 ? TITLE : heads.includes(row + 1) ? HEAD : undefined;
      cells.set(`${row},${column}`, {
        ...(isFormula(value) ? { formula: value[0], formulaResult: value[1] } : { value }),
        ...(value instanceof Date ? { style: DATE } : style ? { style } : {}),
      });
    }
  const rows = lines.map((line) => line.map((cell) => (isFormula(cell) ? cell[1] : cell)));
  const columns = Array.from({ length: Math.max(...rows.map(({ length }) => length)) }, () => ({
    width: 14,
  }));
  return { name, rows, cells, merges, columns };
};

const PANELS = ["K1", "K2", "K3", "K4", "K5", "K6"];
/** A reading to one decimal place, near this one. */
const near = (middle: number, at: number, by: number) =>
  Number((middle + ((at * 37 + by * 23) % 19) / 10).toFixed(1));

/** Insulation before and after the withstand test, side by side under a head of two lines. */
const quayInsulation = () =>
  sheet(
    "Insulation",
    [
      ["Insulation resistance of main circuits"],
      [INVENTED],
      ["Quay switchroom, 12 kV metal-clad switchgear, tests to IEC 62271-200"],
      ["5 kV DC, 1 minute, at least 2 GΩ"],
      ["Date", day(6, 2), null, "Tested by", "T. Example", null, "Instrument", "MT-04"],
      [],
      ["Panel", "Before withstand (GΩ)", null, null, "After withstand (GΩ)", null, null, "Result"],
      [null, "L1-E", "L2-E", "L3-E", "L1-E", "L2-E", "L3-E", null],
      ...PANELS.map((panel, at) => [
        panel,
        near(11.4, at, 1),
        panel === "K3" ? 0.9 : near(12.1, at, 2),
        near(10.8, at, 3),
        near(11.1, at, 4),
        near(11.9, at, 5),
        panel === "K5" ? null : near(10.6, at, 6),
        "OK",
      ]),
    ],
    [7, 8],
    [
      { startRow: 6, startCol: 0, endRow: 7, endCol: 0 },
      { startRow: 6, startCol: 1, endRow: 6, endCol: 3 },
      { startRow: 6, startCol: 4, endRow: 6, endCol: 6 },
      { startRow: 6, startCol: 7, endRow: 7, endCol: 7 },
    ],
  );

const contact = (at: number, pole: number) => 31 + ((at * 5 + pole * 3) % 7);

const quayContacts = () =>
  sheet(
    "Contacts",
    [
      ["Contact resistance, four-wire, 100 A DC"],
      ["Date", day(6, 1), null, "Tested by", "T. Example", null, "Instrument", "MO-11"],
      [],
      ["Panel", "L1 (µΩ)", "L2 (µΩ)", "L3 (µΩ)", "Highest (µΩ)", "Maximum (µΩ)", "Result"],
      ...PANELS.map((panel, at) => {
        const row = at + 5;
        const poles = [0, 1, 2].map((pole) => contact(at, pole));
        const highest = Math.max(...poles);
        const told: CellValue | Formula =
          panel === "K5" ? highest : [`MAX(B${row}:D${row})`, highest];
        return [panel, ...poles, told, 45, "OK"];
      }),
    ],
    [4],
  );

const quayWithstand = () =>
  sheet(
    "Withstand",
    [
      ["Power frequency withstand test on site, 22.4 kV AC, 60 s"],
      [],
      ["Panel", "Phase", "Applied (kV)", "Duration (s)", "Flashover", "Date", "Set", "Result"],
      ...PANELS.flatMap((panel, at) =>
        [1, 2, 3].map((phase) => [
          panel,
          `L${phase}`,
          panel === "K2" && phase === 3 ? 12 : 22.4,
          60,
          "No",
          day(6, 4 + Math.floor(at / 3)),
          panel === "K2" && phase === 1 ? "HV-02" : "HV-07",
          "OK",
        ]),
      ),
    ],
    [3],
  );

const quayTimes = () =>
  sheet(
    "Breaker times",
    [
      ["Breaker operating times at 110 V DC"],
      [],
      ["Panel", "Closing (ms)", null, null, "Opening (ms)", null, null, "Result"],
      [null, "L1", "L2", "L3", "L1", "L2", "L3", null],
      ...PANELS.map((panel, at) => [
        panel,
        ...[1, 2, 3].map((pole) => near(54, at, pole)),
        ...[4, 5, 6].map((pole) => near(31, at, pole)),
        "OK",
      ]),
    ],
    [3, 4],
    [
      { startRow: 2, startCol: 1, endRow: 2, endCol: 3 },
      { startRow: 2, startCol: 4, endRow: 2, endCol: 6 },
    ],
  );

const quayInstruments = () =>
  sheet(
    "Instruments",
    [
      ["Test instruments"],
      [],
      ["Instrument", "Kind", "Serial number", "Calibrated", "Calibration due"],
      ["MT-04", "Insulation tester 5 kV", "INV-2204", day(1, 12), new Date(Date.UTC(2027, 0, 12))],
      ["MO-11", "Micro-ohmmeter 200 A", "INV-2211", day(2, 3), new Date(Date.UTC(2027, 1, 3))],
      ["HV-07", "Test set 50 kV AC", "INV-2217", day(3, 9), new Date(Date.UTC(2027, 2, 9))],
      [
        "HV-02",
        "Test set 50 kV AC",
        "INV-2202",
        new Date(Date.UTC(2025, 4, 20)),
        new Date(Date.UTC(2026, 4, 20)),
      ],
    ],
    [3],
  );

const CUBICLES = ["52-1", "52-2", "52-3", "52-4"];
const CONNECTIONS = ["A-G", "B-G", "C-G", "A-B", "B-C", "C-A"];
const POLES = ["A", "B", "C"];

/** One form a cubicle: labels above, and the tests as small tables one below the other. */
const form = (cubicle: string, at: number): WriteSheet =>
  sheet(
    cubicle,
    [
      [`Cubicle ${cubicle}: acceptance test form, 15 kV metal-clad switchgear`],
      [INVENTED],
      ["Project", "Mill substation (invented)", null, "Standard", "ANSI/NETA ATS"],
      ["Cubicle", cubicle, null, "Date", day(4, 14 + at)],
      ["Tested by", "R. Sample", null, "Air temperature", 21 + at, "°C"],
      ["Insulation tester", "IR-3", null, "Micro-ohmmeter", "LR-1"],
      [],
      ["Insulation resistance, 5000 V DC, 1 minute"],
      ["Connection", "Reading (MΩ)", "Minimum (MΩ)", "Result"],
      ...CONNECTIONS.map((connection, line) => [
        connection,
        cubicle === "52-2" && connection === "A-B" ? 42 : 36_000 + 9_000 * near(0, at, line),
        5000,
        "Pass",
      ]),
      [],
      [],
      ["Contact resistance, 100 A DC"],
      ["Pole", "Reading (µΩ)", "Maximum (µΩ)", "Result"],
      ...POLES.map((pole, line) => [
        pole,
        cubicle === "52-3" && pole === "C" ? 71 : 44 + ((at * 3 + line * 5) % 8),
        60,
        "Pass",
      ]),
      [],
      ["Withstand test, 60 Hz"],
      ["Phase", "Applied (kV)", "Duration (s)", "Flashover", "Result"],
      ...POLES.map((phase) => [
        phase,
        27,
        60,
        cubicle === "52-4" && phase === "B" ? "Yes" : "No",
        "Pass",
      ]),
    ],
    [9, 19, 24],
  );

/** The workbooks by file name. */
export const foreignBooks = async (): Promise<Readonly<Record<string, Uint8Array>>> => {
  const properties = { creator: "Invented", created: day(6, 8), modified: day(6, 8) };
  return {
    "quay-test-sheets.xlsx": await writeXlsx({
      properties,
      sheets: [quayInsulation(), quayContacts(), quayWithstand(), quayTimes(), quayInstruments()],
    }),
    "mill-cubicle-forms.xlsx": await writeXlsx({ properties, sheets: CUBICLES.map(form) }),
  };
};
