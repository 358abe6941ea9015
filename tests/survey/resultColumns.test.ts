import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { messagesFor } from "../../src/messages/messages";
import type { CellValue } from "../../src/records/kind";
import type { BesideTable } from "../../src/sheets/besideTable";
import { a1 } from "../../src/sheets/cells/address";
import { readArea } from "../../src/sheets/cells/area";
import type { SheetSnapshot } from "../../src/sheets/snapshot";
import type { SurveyAnswers } from "../../src/survey/checkSurvey";
import { resultColumns } from "../../src/survey/results/resultColumns";
import { computeFormula, isError, type Value } from "../support/formula";
import { ANSWERS, checked, drawSheet, TODAY } from "./support";

/** Workbooks as people keep them; every one is invented. */
const LAYOUTS = {
  "limit in a column, one reading a line": `
Insulation resistance, 5 kV DC, 1 min
Panel|Connection|Reading (GΩ)|Minimum (GΩ)|Result
W1|A-E|31.2|2|Pass
W1|B-E|33.5|2|Pass
W2|A-E|1.4|2|Pass
W2|B-E|> 36.7|2|Pass
W3|A-E|28.4|2000 MΩ|Pass
W3|B-E||2|`,
  "phases across, limit in the heading": `
Contact resistance, 100 A DC, max. 60 µΩ
Panel|A (µΩ)|B (µΩ)|C (µΩ)|Remarks
P1|41|42|40|
P2|44|61|43|
P3|39||38|
P4|40|41|42|`,
  "no limit stated: the criterion, with a temperature": `
Insulation resistance, main circuit
Cubicle|Phase|R 60 s, GΩ|Temp °C|Tester
C1|L1-E|12.5|31|M. Dorn
C1|L2-E|4.1|31|M. Dorn
C1|L3-E|9.1|10|M. Dorn
C2|L1-E|6.2|10|M. Dorn
C2|L2-E|> 20|10|M. Dorn
C2|L3-E|800 MΩ|21|M. Dorn`,
  "corrected by the workbook itself, °F": `
Insulation resistance
Cubicle|Phase|Reading MΩ|Temp °F|Corrected to 20 °C, MΩ|Min MΩ
C1|L1-E|8000|68|8000|5000
C1|L2-E|4000|86|8000|5000
C1|L3-E|9000|86|18000|5000
C2|L1-E|6200|86|12400|5000
C2|L2-E|2400|86|4800|5000`,
  "limits in another unit, and a result that fails": `
Panel|Joint|Resistance µΩ|Max. mΩ|Result
J1|a|20|0.05|OK
J1|b|51|0.05|OK
J2|a|30|0.05|Fail
J2|b|31|0.05|OK
J3|a|32|0.05|OK`,
  "two sides: torque by the value called for": `
Bolted joints, torque check
Panel|Joint|Size|Required N·m|Torque N·m|Result
P1|1|M12|70|71|ok
P1|2|M12|70|59|ok
P2|1|M12|70|70|ok
P2|2|M12|70|90|ok
P3|1|M12|70|69|ok`,
  "before and after, each with its result": `
Insulation resistance, min. 5 GΩ
Panel|Before HV test, GΩ||||After HV test, GΩ|||
|A-E|B-E|C-E|Result|A-E|B-E|C-E|Result
U1|21|22|23|P|20|21|22|P
U2|24|4.2|25|P|23|24|24|P
U3|27|28|29|P|26|27|4.8|F
U4|30|31|32|P|29|30|31|P`,
  "panels across": `
Contact resistance µΩ, max 50
|F1|F2|F3|F4
L1|40|41|42|43
L2|44|55|42|41
L3|40|42|41|39`,
  "numbers with a comma, a sentence in place of a reading": `
Isolationswiderstand 5 kV DC
Feld|Leiter|Messwert GΩ|Grenzwert GΩ|Bemerkung
A1|L1|12,5|1|
A1|L2|0,85|1|
A1|L3|13,25|1|
A2|L1|nicht gemessen|1|
A2|L2|11,75|1|
A2|L3|12,25|1|`,
} as const;

const columnsFor = (sheet: SheetSnapshot, answers: SurveyAnswers = ANSWERS) =>
  resultColumns({ sheets: [sheet] }, TODAY, answers, messagesFor("en").survey);

/** What our columns come to over the cells of a sheet, computed from their formulas. */
function computed(sheet: SheetSnapshot, tables: readonly BesideTable[]) {
  const ours = new Map(
    tables.flatMap(({ cells }) => cells.map((cell) => [a1(cell.row, cell.column), cell] as const)),
  );
  const known = new Map<string, Value>();
  const address = (at: string): Value => {
    const cell = ours.get(at);
    if (cell?.formula === undefined) {
      const { top = 0, left = 0 } = readArea(at) ?? {};
      return cell?.value ?? sheet.cells?.cell(top, left) ?? null;
    }
    const found = known.get(at) ?? computeFormula(cell.formula, { ...NO_TABLE, address });
    known.set(at, found);
    return found;
  };
  return address;
}

const NO_TABLE = {
  cell: (header: string): never => {
    throw new Error(`no table has ${header}`);
  },
  column: (): never[] => [],
  span: (): never[] => [],
};

/** The result of each line, by its row of the sheet, or its column where lines are columns. */
function resultsOf(tables: readonly BesideTable[], address: (at: string) => Value) {
  const results = new Map<number, Value[]>();
  for (const { area, cells, across } of tables) {
    const titles = cells.filter(({ value }) => String(value).startsWith("GEAR result"));
    for (const title of titles)
      for (const { row, column } of cells) {
        const isBelow = across
          ? row === title.row && column !== title.column
          : column === title.column && row !== title.row;
        if (!isBelow || row < area.top) continue;
        const line = across ? column : row;
        results.set(line, [...(results.get(line) ?? []), address(a1(row, column))]);
      }
  }
  return results;
}

const near = (one: Value, other: CellValue) =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= Math.abs(other) * 1e-9
    : one === other;

/** Holds the results of a sheet against what the check says of each line. */
function expectAgreement(sheet: SheetSnapshot, tables: readonly BesideTable[]): void {
  const results = resultsOf(tables, computed(sheet, tables));
  const across = tables.some((table) => table.across);
  const { findings } = checked([sheet]);
  const at = (line: number) =>
    findings.filter(({ address }) => {
      const { top, left } = readArea(address) ?? { top: -1, left: -1 };
      return (across ? left : top) === line;
    });
  for (const [line, verdicts] of results) {
    const told = at(line);
    const isDoubt = findings.some(({ rule }) => rule === "survey-limit-doubt");
    const outside = told.some(({ rule }) => rule === "survey-limit");
    const stops = told.filter(({ weight }) => weight === "stop");
    const where = `line ${line}: ${verdicts.join()} against ${told.map(({ message }) => message).join("; ")}`;
    if (outside) expect(verdicts, where).toContain("Fail");
    else if (!isDoubt && stops.every(({ rule }) => rule !== "survey-verdict"))
      expect(verdicts.includes("Fail"), where).toBe(
        told.some(({ rule }) => rule === "survey-verdict") || saysFail(sheet, line, across),
      );
    if (stops.length > 0)
      expect(
        verdicts.every((one) => one === "Pass"),
        where,
      ).toBe(false);
    if (stops.some(({ rule }) => rule === "survey-missing"))
      expect(
        verdicts.some((one) => one === "Missing" || one === "Fail"),
        where,
      ).toBe(true);
  }
}

const saysFail = ({ cells }: SheetSnapshot, line: number, across: boolean): boolean =>
  !across &&
  Array.from({ length: cells?.columnCount ?? 0 }, (_, column) => cells?.cell(line, column)).some(
    (value) => value === "Fail" || value === "F",
  );

describe.each(Object.entries(LAYOUTS))("%s", (_name, drawing) => {
  const sheet = drawSheet("Sheet", drawing);
  const { beside, without } = columnsFor(sheet);

  test("gets columns over free cells only", () => {
    expect(without).toEqual([]);
    expect(beside.length).toBeGreaterThan(0);
    for (const { cells } of beside)
      for (const { row, column } of cells)
        expect(sheet.cells?.cell(row, column) ?? null).toBeNull();
  });

  test("each formula comes to the value that is written with it", () => {
    const address = computed(sheet, beside);
    for (const { cells } of beside)
      for (const { row, column, value, formula } of cells) {
        if (formula === undefined) continue;
        const found = address(a1(row, column));
        expect(
          near(found, value),
          `${a1(row, column)} =${formula}: ${JSON.stringify(found)}, not ${value}`,
        ).toBe(true);
      }
  });

  test("each result is what the check says of its line", () => expectAgreement(sheet, beside));
});

test("the results follow the cells: after an edit they come to what the check then says", () => {
  const names = Object.keys(LAYOUTS) as (keyof typeof LAYOUTS)[];
  const edit = fc.record({
    name: fc.constantFrom(...names.filter((name) => name !== "panels across")),
    cell: fc.nat(60),
    value: fc.constantFrom<CellValue>(0.4, 3, 45, 70, 5200, null, "> 90", "2 TΩ"),
  });
  fc.assert(
    fc.property(edit, ({ name, cell, value }) => {
      const sheet = drawSheet("Sheet", LAYOUTS[name]);
      const { beside } = columnsFor(sheet);
      const readings = numbersOf(sheet);
      const place = readings[cell % readings.length];
      if (!place || !sheet.cells) return;
      const { cells } = sheet;
      const after: SheetSnapshot = {
        ...sheet,
        cells: {
          ...cells,
          cell: (row, column) =>
            row === place.row && column === place.column ? value : cells.cell(row, column),
        },
      };
      const now = columnsFor(after);
      // What the check compares a line with may change with the cell itself, such as a limit or a habit.
      const formulas = (tables: readonly BesideTable[]) =>
        tables.flatMap((table) => table.cells.map(({ formula }) => formula)).join();
      const results = [...resultsOf(beside, computed(after, beside))];
      for (const [, verdicts] of results)
        for (const verdict of verdicts) expect(isError(verdict)).toBe(false);
      if (formulas(now.beside) === formulas(beside)) expectAgreement(after, beside);
    }),
    { numRuns: 40 },
  );
});

/** The cells of a sheet that hold a number. */
const numbersOf = ({ cells }: SheetSnapshot) => {
  const found: { row: number; column: number }[] = [];
  for (let row = 0; row < (cells?.rowCount ?? 0); row++)
    for (let column = 0; column < (cells?.columnCount ?? 0); column++)
      if (typeof cells?.cell(row, column) === "number") found.push({ row, column });
  return found;
};
