import { applyChanges } from "../../../src/excel/workbook";
import type { Lineup } from "../../../src/lineup/lineup";
import { NOTHING_REMEMBERED } from "../../../src/sheets/kept/remembered";
import { planFor } from "../../../src/sheets/plan/plan";
import { addSheet, newBook, putBox, type StandInBook } from "../../../src/standin/book";
import { calculateRecords } from "../../../src/standin/calculate";
import { typeInto } from "../../../src/standin/edits";
import { type StandInHost, standIn } from "../../../src/standin/host";
import { CONTACTS_ALONE, longLineup } from "../../support/lineups";
import { builtExcel, inExcel } from "../excelSupport";
import { RECORDS, readingOf } from "./tokens";

/** An invented lineup with contact resistances alone, so that its workbook is small. */
export const lineupOf = (panels: number, changes: Partial<Lineup> = {}): Lineup =>
  longLineup(panels, {
    leaveOut: CONTACTS_ALONE,
    ...changes,
  });

/** The same with another limit for every row. */
export const planOf = (panels: number, limit: number) =>
  planFor(
    lineupOf(panels, {
      criteria: [
        {
          quantity: "contact resistance µΩ",
          value: limit,
          from: "maker",
          document: "INV-1 (invented)",
        },
      ],
    }),
  );

/** Readings that a workbook begins with. */
const FILLED = [0, 4];
const FIRST_SERIAL = 1;
/** Serial numbers that are free. */
export const FREE_SERIAL = 10;

/** Excel with record sheets of ours, some readings in them. */
export async function builtBook(): Promise<StandInBook> {
  const { book } = await builtExcel(planFor(lineupOf(2)));
  for (const record of FILLED)
    typeInto(book, "GearContact", rowOf(book, record), "R µΩ", readingOf(record, FIRST_SERIAL));
  calculateRecords(book);
  return book;
}

const rowOf = (book: StandInBook, record: number): number => {
  const sheet = book.sheets.find(({ name }) => name === "Contacts");
  const { panel, part, pole } = RECORDS[record] as (typeof RECORDS)[number];
  const top = sheet?.tables[0]?.area.top ?? 0;
  const row = sheet?.cells.findIndex((cells) =>
    [panel, part, pole].every((name, at) => cells?.[at]?.value === name),
  );
  return (row ?? 0) - top - 1;
};

/** The same, of which somebody has taken the sheets away that hold no readings. */
export async function lightBook(): Promise<StandInBook> {
  const book = await builtBook();
  const kept = new Set(["Contacts", "Instruments"]);
  book.sheets = book.sheets.filter(({ name }) => kept.has(name));
  return book;
}

/** Excel with a sheet in somebody's own layout (invented), mapped, and no sheet of ours. */
export async function ownBook(): Promise<StandInBook> {
  const book = newBook();
  const sheet = addSheet(book, "Resistances");
  const reading = (record: number) =>
    FILLED.includes(record) ? readingOf(record, FIRST_SERIAL) / 1000 : null;
  [
    ["Invented works, contact resistance"],
    ["Bay", "Device", "L1 (mΩ)", "L2 (mΩ)", "L3 (mΩ)", "Day"],
    ["=K0001", "Breaker Q0", reading(0), reading(1), reading(2), null],
    ["=K0002", "Breaker Q0", reading(3), reading(4), reading(5), null],
  ].forEach((row, at) => {
    row.forEach((value, column) => {
      if (value !== null) putBox(book, sheet, at, column, { value });
    });
  });
  const host = standIn(book, calculateRecords);
  await inExcel(host, (context) =>
    applyChanges(context, {
      lineup: lineupOf(2),
      remembered: { ...NOTHING_REMEMBERED, maps: [OWN_MAP] },
    }),
  );
  return book;
}

export const OWN_MAP = {
  sheet: "Resistances",
  kind: "contact",
  titles: 2,
  shape: "wide" as const,
  columns: { Bay: "object", Device: "part" },
};

export const hostOf = (book: StandInBook): StandInHost =>
  standIn(structuredClone(book), calculateRecords);
