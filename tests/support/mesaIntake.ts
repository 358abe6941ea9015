import { readFileSync } from "node:fs";
import { openBook } from "../../src/intake/openBook";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { readLineup } from "../../src/records/readLineup";
import { planFor } from "../../src/sheets/plan";
import { memoryBook } from "./memoryBook";

const lineup = readLineup(readFileSync("sample-workbooks/mesa-metal-clad.lineup.json", "utf8"));
if (!lineup.ok) throw new Error(JSON.stringify(lineup.errors));
/** The workbook of the sample lineup by American practice, nothing recorded yet. */
export const book = openBook(memoryBook(planFor(lineup.value)).snapshot);

/** 24 November 2026. */
export const TODAY = 46_350;

/** What lines come to in the sample lineup by American practice: readings as `kind keys column=value`, in one order. */
export const placed = (name: string, lines: readonly string[]): string[] => {
  const intake = takeIn(book, [{ name, content: `${lines.join("\n")}\n` }], NO_ANSWERS, TODAY);
  if (!intake.ok) throw new Error(intake.reason);
  return intake.cells
    .filter(({ column }) => !["origin", "date", "by", "instrument"].includes(column))
    .map(({ table, row, column, value }) => {
      const keys = table.kind.columns.filter(({ role }) => role === "key").map(({ id }) => id);
      const record = table.rows[row];
      return `${table.kind.id} ${keys.map((key) => record?.[key] ?? "").join(" ")} ${column}=${value}`;
    })
    .sort();
};
