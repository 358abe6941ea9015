import { daySerial, serialDay } from "../quantities/dates";
import { quoted } from "../quantities/quoted";
import { answer, type Result, refuse } from "../quantities/result";

const MONTHS = ["jan", "feb", "mar", "apr", "may", "jun", "jul", "aug", "sep", "oct", "nov", "dec"];
const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,].*)?$/;
const NUMBERS = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4})(?:[ ,].*)?$/;
const NAMED = /^(\d{1,2})[ .-]*([a-z]{3,9})[ .,-]*(\d{4})(?:[ ,].*)?$/i;

export type DateOrder = "day first" | "month first";

/** Whether dates such as 03/11/2026 have the day or the month first, from those that can be read one way only. */
export const dateOrder = (texts: Iterable<string>): DateOrder | undefined => {
  const orders = new Set<DateOrder>();
  for (const text of texts) {
    const [, one, mark, two] = NUMBERS.exec(text.trim().slice(0, 40)) ?? [];
    if (mark === ".") continue;
    if (Number(one) > 12) orders.add("day first");
    if (Number(two) > 12) orders.add("month first");
  }
  return orders.size === 1 ? [...orders][0] : undefined;
};

/**
 * A calendar day as a spreadsheet's serial number: `2026-11-03`, `03.11.2026`, `3 Nov 2026`. What
 * stands after it, such as the time, is passed over. With points the day comes first.
 *
 * @param order of day and month, where the column shows it
 * @example readDate("2026-11-03") // 46329
 */
export const readDate = (text: string, order?: DateOrder): Result<number> => {
  const written = text.trim().slice(0, 40);
  const iso = ISO.exec(written);
  if (iso) return dayOf(text, iso[1], iso[2], iso[3]);
  const named = NAMED.exec(written);
  if (named) {
    const month = MONTHS.indexOf((named[2] ?? "").slice(0, 3).toLowerCase()) + 1;
    return dayOf(text, named[3], String(month), named[1]);
  }
  const [, one, mark, two, year] = NUMBERS.exec(written) ?? [];
  if (year === undefined) return wrong(text);
  const known = mark === "." ? "day first" : (order ?? dateOrder([written]));
  if (known === undefined && one !== two)
    return refuse(
      "wrong",
      `${quoted(text)} could have the day or the month first; write it as 2026-11-25.`,
    );
  return known === "month first" ? dayOf(text, year, one, two) : dayOf(text, year, two, one);
};

const dayOf = (text: string, year = "", month = "", day = ""): Result<number> => {
  const iso = `${year}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  const serial = daySerial(iso);
  return Number.isFinite(serial) && serialDay(serial) === iso ? answer(serial) : wrong(text);
};

const wrong = (text: string) =>
  refuse("wrong", `${quoted(text)} is not a date; write it as 2026-11-25.`);

/** The time of day in a text such as `09:14` or `2026-11-03 09:14:30`, as a fraction of a day. */
export const readTime = (text: string): number | undefined => {
  const [, hour, minute, second] =
    /(?:^|[T ,])(\d{1,2}):(\d\d)(?::(\d\d))?$/.exec(text.trim().slice(-40)) ?? [];
  return minute === undefined
    ? undefined
    : (Number(hour) * 3600 + Number(minute) * 60 + Number(second ?? 0)) / 86400;
};
