import { readFileSync } from "node:fs";
import { openBook } from "../../src/intake/openBook";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import type { Lineup } from "../../src/lineup/lineup";
import { readLineup } from "../../src/records/readLineup";
import { planFor } from "../../src/sheets/plan/plan";
import type { RecordBook } from "../../src/sheets/recordBook";
import { english } from "./inWords";
import { memoryBook } from "./memoryBook";

/** 24 November 2026. */
export const TODAY = 46_350;

/** The workbook of a sample lineup, nothing recorded yet. */
export const sampleBook = (name: string): RecordBook => {
  const lineup = readLineup(readFileSync(`sample-workbooks/${name}.lineup.json`, "utf8"));
  if (!lineup.ok) throw new Error(JSON.stringify(lineup.errors));
  return bookOf(lineup.value);
};

/** The workbook of a lineup, nothing recorded yet. */
export const bookOf = (lineup: Lineup): RecordBook =>
  openBook(memoryBook(planFor(lineup)).snapshot);

/** Makes what lines come to in a workbook: readings as `kind keys column=value`, in one order. */
export const placedInto =
  (book: RecordBook) =>
  (name: string, lines: readonly string[]): string[] => {
    const intake = takeIn(book, [{ name, content: `${lines.join("\n")}\n` }], NO_ANSWERS, TODAY);
    if (!intake.ok) throw new Error(intake.reason(english));
    return intake.cells
      .filter(({ column }) => !["origin", "date", "by", "instrument"].includes(column))
      .map(({ table, row, column, value }) => {
        const keys = table.kind.columns.filter(({ role }) => role === "key").map(({ id }) => id);
        const record = table.rows[row];
        return `${table.kind.id} ${keys.map((key) => record?.[key] ?? "").join(" ")} ${column}=${value}`;
      })
      .sort();
  };
