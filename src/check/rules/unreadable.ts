import { readReading } from "../../quantities/readReading";
import { answer, refuse } from "../../quantities/result";
import { isBlank } from "../../records/kind";
import { dayOf, overColumns, type Rule, rowName, where } from "../context";
import { isErrorValue } from "../errorValue";

/** Text in a numeric entry that cannot be read as a reading, or in a date's place that is no date. */
export const unreadable: Rule = {
  id: "unreadable",
  title: "Text that is no reading",
  finds: "text in the place of a number or date that cannot be read as one",
  why: "The row is judged without it.",
  satisfies: "the reading as number, or with its unit; the day as a date",
  quiet: "for what reads as a quantity, such as 5.2 GΩ or > 2 TΩ",
  reads: "row",
  rows: (table) => {
    const typed = table.kind.columns.filter(
      ({ role, unit, accepts }) => role === "entry" && (unit || accepts?.type === "date"),
    );
    return (row, stored) =>
      overColumns(typed, ({ id, unit, header }) => {
        const cell = stored[id];
        if (typeof cell !== "string" || isBlank(cell) || isErrorValue(cell)) return undefined;
        const read = unit ? readReading(cell, { unit }) : asDay(cell);
        return read.ok
          ? undefined
          : {
              rule: "unreadable",
              weight: "query",
              ...where(table, row, id),
              message: `${rowName(table, row)}: "${header}" cannot be read: ${read.reason}`,
              found: cell.slice(0, 80),
            };
      });
  },
};

const asDay = (text: string) => {
  const day = dayOf(text);
  return day === undefined
    ? refuse("wrong", `"${text.slice(0, 40)}" is text, not a date; type it as 2026-11-25.`)
    : answer(day);
};
