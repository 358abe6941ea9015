import { a1 } from "../../../src/sheets/cells/address";
import { boxAt, type Sheet, type StandInBook } from "../../../src/standin/book";

/** Panels and poles of the workbooks of these tests: the records that readings are of. */
export const RECORDS = ["=K0001", "=K0002", "=K0003"].flatMap((panel) =>
  ["L1", "L2", "L3"].map((pole) => ({ panel, part: "Breaker Q0", pole })),
);

/** Steps of a serial number; the rest of the division by it is the record. */
const STEP = 16;
const LEAST = 20_000 + STEP;
const MOST = 49_000;

/**
 * A reading in µΩ that tells by itself which record it is of, and of which no two are alike: thousandths
 * over 20 µΩ.
 */
export function readingOf(record: number, serial: number): number {
  const thousandths = 20_000 + serial * STEP + record;
  if (thousandths > MOST) throw new Error("no more serial numbers");
  return thousandths / 1000;
}

/** How a reading is called in these tests, whatever unit it stands in; undefined for any other value. */
export function tokenIn(value: unknown): number | undefined {
  if (typeof value !== "number" || value <= 0) return undefined;
  const exact = value < 1 ? value * 1_000_000 : value * 1000;
  const token = Math.round(exact);
  return Math.abs(exact - token) < 1e-6 && token >= LEAST && token <= MOST && token % 1000 !== 0
    ? token
    : undefined;
}

export const recordOf = (token: number): number => (token - 20_000) % STEP;

/** Where a reading stands. */
export interface Standing {
  readonly token: number;
  /** Sheet, row and column as they are called by what stands there. */
  readonly place: string;
  /** Its cell as an error names it: `"Contacts" G5`. */
  readonly cell: string;
  /** Whether it is on its record, or in the history under its name. */
  readonly isRight: boolean;
  /** Whether it stands where readings are kept that others have taken the place of. */
  readonly isHistory: boolean;
}

/** Every reading of a workbook. What formulas come to is none. */
export function standings(book: StandInBook): Standing[] {
  return book.sheets.flatMap((sheet) => {
    const read = readerOf(sheet);
    return sheet.cells.flatMap((row, at) =>
      (row ?? []).flatMap((box, column): Standing[] => {
        const token = box?.formula === undefined ? tokenIn(box?.value) : undefined;
        if (token === undefined) return [];
        const { name, isReading, isHistory = false } = read(at, column);
        const { panel = "", part = "", pole = "" } = RECORDS[recordOf(token)] ?? {};
        // Without its column the part, which is the same for all records, is not told any more.
        const names = [part, ""].map((told) => `${panel} · ${told} · ${pole}`);
        const isRight = isReading && names.includes(name);
        const place = `${sheet.name}: ${name}, column ${column}`;
        const cell = `"${sheet.name}" ${a1(at, column)}`;
        return [{ token, place, cell, isRight, isHistory }];
      }),
    );
  });
}

type Reader = (
  row: number,
  column: number,
) => { name: string; isReading: boolean; isHistory?: boolean };

const textAt = (sheet: Sheet, row: number, column: number): string =>
  String(boxAt(sheet, row, column)?.value ?? "");

/** How the rows of a sheet are called: by the titles of a table, or of somebody's own layout. */
function readerOf(sheet: Sheet): Reader {
  const top = sheet.cells.findIndex((row) =>
    row?.some((box) => ["Bay", "R µΩ", "Replaced on"].includes(String(box?.value))),
  );
  const titles = (sheet.cells[top] ?? []).map((box) => String(box?.value ?? ""));
  const at = (title: string) => titles.indexOf(title);
  const named = (row: number, of: readonly string[]) =>
    of.map((title) => textAt(sheet, row, at(title))).join(" · ");
  if (at("Replaced on") >= 0)
    return (row, column) => {
      const said = named(row, ["Column"]);
      const name = named(row, ["Row"]);
      // What was typed while something was written is kept under its address.
      const isReading = column === at("Value") && said === "R µΩ";
      return {
        name: said === "" ? nameOf(sheet, row, column) : name,
        isReading: isReading || said === "",
        isHistory: true,
      };
    };
  if (at("Bay") >= 0)
    return (row, column) => {
      const pole = /^(L\d) \(mΩ\)$/.exec(titles[column] ?? "")?.[1] ?? "";
      const part = named(row, ["Device"]);
      return { name: `${named(row, ["Bay"])} · ${part} · ${pole}`, isReading: row > top };
    };
  return (row, column) => ({
    name: named(row, ["Panel", "Part", "Pole"]),
    isReading: row > top && column === at("R µΩ"),
  });
}

/** The record that a value itself tells, where the history can only tell the cell that it stood in. */
function nameOf(sheet: Sheet, row: number, column: number): string {
  const token = tokenIn(boxAt(sheet, row, column)?.value) ?? 0;
  const { panel = "", part = "", pole = "" } = RECORDS[recordOf(token)] ?? {};
  return `${panel} · ${part} · ${pole}`;
}
