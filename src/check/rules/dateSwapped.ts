import { daySerial, serialDay } from "../../quantities/dates";
import { cellsOf } from "../../records/cellsOf";
import { dayOf, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** Days by which a date must stand away from its table's others before day and month are tried in exchange: practice. */
const AWAY = 21;
/** Rows with a date from which on a table tells when it was worked on. */
const ENOUGH = 3;

/** A date that stands apart from its table's others, and among them with day and month exchanged. */
export const dateSwapped: Rule = {
  id: "date-swapped",
  reads: "table",
  find: (table, { text }) => {
    const rowsOn = new Map<number, number[]>();
    let dated = 0;
    for (const [row, date] of cellsOf(table.rows, "date").entries()) {
      const day = table.aside.has(row) ? undefined : dayOf(date);
      if (day === undefined) continue;
      dated += 1;
      const same = rowsOn.get(day);
      if (same) same.push(row);
      else rowsOn.set(day, [row]);
    }
    if (dated <= ENOUGH) return [];
    const days = [...rowsOn.keys()].sort((one, other) => one - other);
    return [...rowsOn].flatMap(([day, [row = 0, another]]): Finding[] => {
      if (another !== undefined) return [];
      const exchanged = exchange(day);
      if (exchanged === undefined || exchanged === day) return [];
      const others = othersThan(day, days);
      if (distance(others, day) <= AWAY || distance(others, exchanged) > AWAY / 3) return [];
      return [
        {
          rule: "date-swapped",
          weight: "query",
          ...where(table, row, "date"),
          message: text.rules["date-swapped"].message(
            rowName(table, row),
            serialDay(day),
            serialDay(others[0]),
            serialDay(others[1]),
            serialDay(exchanged),
          ),
          found: serialDay(day),
          expected: serialDay(exchanged),
        },
      ];
    });
  },
};

/** First and last of the days without one of them. */
const othersThan = (day: number, days: readonly number[]): [number, number] => [
  (days[0] === day ? days[1] : days[0]) ?? day,
  (days.at(-1) === day ? days.at(-2) : days.at(-1)) ?? day,
];

const distance = ([first, last]: readonly [number, number], day: number) =>
  Math.max(first - day, day - last, 0);

/** The day with month and day of the month exchanged; undefined where that is no date. */
function exchange(day: number): number | undefined {
  const [year, month, date] = serialDay(day).split("-");
  return Number(date) <= 12 ? daySerial(`${year}-${date}-${month}`) : undefined;
}
