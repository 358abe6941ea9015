import type { Told } from "../../messages/told";
import { type DateOrder, daySerial, serialDay } from "../../quantities/dates";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import type { Evidence } from "../table/evidence";
import { anyWord } from "./phrases";

/** How the names of each month begin, without accents. */
const MONTHS = Array.from(
  { length: 12 },
  (_, month) => new RegExp(`^${anyWord(({ months }) => months.slice(month, month + 1))}`),
);
const ORDINALS = anyWord(({ ordinals }) => ordinals);
const ISO = /^(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[T ,].*)?$/;
const NUMBERS = /^(\d{1,2})([./-])(\d{1,2})\2(\d{4}|\d\d)(?:[ ,T].*)?$/;
const DAY_NAMED = new RegExp(
  `^(\\d{1,2})(?:\\.|${ORDINALS})?[ -]*(?:de |of )?(\\p{L}{3,10})[ .,-]*(?:de |del )?(\\d{4}|\\d\\d)(?:[ ,T].*)?$`,
  "u",
);
const MONTH_NAMED = new RegExp(
  `^(\\p{L}{3,10})\\.?[ -]+(\\d{1,2})${ORDINALS}?[ ,-]+(\\d{4})(?:[ ,T].*)?$`,
  "u",
);
/** Days that a spreadsheet writes as numbers: 1982 to 2099, so that no reading passes for one. */
const SERIAL = /^(\d{5})(?:[.,](\d+))?$/;
const [FIRST_SERIAL, LAST_SERIAL] = [30_000, 73_050];

export type { DateOrder } from "../../quantities/dates";

/**
 * Whether dates such as 03/11/2026 have the day or the month first, from those that can be read one way
 * only.
 *
 * @param lineOf the line on which the text at an index stands, for the sentence
 */
export const dateOrder = (
  texts: Iterable<string>,
  lineOf: (index: number) => number = (index) => index + 1,
): OrderEvidence => {
  const proofs: { [Order in DateOrder | "open"]?: Proof } = {};
  let index = -1;
  let last: string | undefined;
  for (const text of texts) {
    index += 1;
    if (text === last) continue;
    last = text;
    const order = orderIn(text.trim().slice(0, 40));
    if (order) proofs[order] ??= { text, line: lineOf(index) };
  }
  return orderProved(proofs);
};

const orderProved = ({
  open,
  "day-first": day,
  "month-first": month,
}: {
  readonly [Order in DateOrder | "open"]?: Proof;
}): OrderEvidence => {
  const on = ({ text, line }: Proof, { intake: { seen } }: Told) =>
    seen.ordersOn(quoted(text), line);
  if (day && month)
    return {
      value: undefined,
      evidence: (text) => text.intake.seen.bothOrders(on(day, text), on(month, text)),
      confidence: "open",
      isContradicted: true,
    };
  const proof = day ?? month;
  if (proof) {
    const value = day ? "day-first" : "month-first";
    return {
      value,
      evidence: (text) => {
        const { seen } = text.intake;
        return seen.orderProved(seen.first[value], on(proof, text));
      },
      confidence: "certain",
    };
  }
  return {
    value: undefined,
    evidence: (text) =>
      open ? text.intake.seen.orderOpen(on(open, text)) : text.intake.seen.noDates,
    confidence: open ? "open" : "certain",
  };
};

/** A text that tells the order, and its line. */
interface Proof {
  readonly text: string;
  readonly line: number;
}

/** Which order the dates of a file have, and whether some of them have the one and some the other. */
export interface OrderEvidence extends Evidence<DateOrder | undefined> {
  readonly isContradicted?: true;
}

/** The order that a date proves; "open" where it could be read either way, undefined where the question does not arise. */
const orderIn = (text: string): DateOrder | "open" | undefined => {
  const [, one, mark, two, year = ""] = NUMBERS.exec(text) ?? [];
  if (one === undefined || mark === "." || one === two || mayBeYearFirst(one, mark, year))
    return undefined;
  const [first, second] = [Number(one), Number(two)];
  if (first > 12) return second > 12 ? undefined : "day-first";
  return second > 12 ? "month-first" : "open";
};

/** 26-11-03: the year could stand first. */
const mayBeYearFirst = (one: string, mark: string | undefined, year: string) =>
  mark === "-" && year.length === 2 && Number(one) >= 20 && Number(year) <= 31;

/**
 * A calendar day as a spreadsheet's serial number: `2026-11-03`, `03.11.2026`, `3-Nov-26`,
 * `November 3, 2026`, or the serial number itself. What stands after it, such as the time, is passed
 * over. With points the day comes first; a year of two digits is of this century.
 *
 * @param order of day and month, where the file shows it or the user has said it
 * @example readDate("2026-11-03") // 46329
 */
export const readDate = (text: string, order?: DateOrder): Result<number, Told> => {
  const written = text.trim().slice(0, 40);
  const iso = ISO.exec(written);
  if (iso) return dayOf(text, iso[1], iso[2], iso[3]);
  const serial = SERIAL.exec(written);
  if (serial) return serialOf(text, Number(serial[1]));
  const named = DAY_NAMED.exec(written);
  if (named) return dayOf(text, named[3], monthOf(named[2]), named[1]);
  const american = MONTH_NAMED.exec(written);
  if (american) return dayOf(text, american[3], monthOf(american[1]), american[2]);

  const [, one = "", mark, two, year] = NUMBERS.exec(written) ?? [];
  if (year === undefined) return wrong(text);
  if (order === undefined && mayBeYearFirst(one, mark, year))
    return refuse("wrong", ({ intake }) => intake.cells.yearFirst(quoted(text)));
  const shown = orderIn(written);
  const known = mark === "." ? "day-first" : shown === "open" ? order : (shown ?? order);
  if (known === undefined && one !== two)
    return refuse("wrong", ({ intake }) => intake.cells.dayOrMonth(quoted(text)));
  return known === "month-first" ? dayOf(text, year, one, two) : dayOf(text, year, two, one);
};

const monthOf = (name = ""): string => {
  const plain = name.toLowerCase().normalize("NFD").replace(/\p{M}/gu, "");
  return String(MONTHS.findIndex((month) => month.test(plain)) + 1);
};

const serialOf = (text: string, serial: number): Result<number, Told> =>
  serial >= FIRST_SERIAL && serial <= LAST_SERIAL ? answer(serial) : wrong(text);

const dayOf = (text: string, year = "", month = "", day = ""): Result<number, Told> => {
  const whole = year.length === 2 ? `20${year}` : year;
  const iso = `${whole}-${month.padStart(2, "0")}-${day.padStart(2, "0")}`;
  const serial = daySerial(iso);
  return Number.isFinite(serial) && serialDay(serial) === iso ? answer(serial) : wrong(text);
};

const wrong = (text: string) =>
  refuse("wrong", ({ intake }: Told) => intake.cells.noDate(quoted(text)));

const TIME =
  /(?:^|[T ,])(\d{1,2}):(\d\d)(?::(\d\d)(?:[.,]\d+)?)?(?: ?([AP])\.?M\.?)?(?:Z|[+-]\d\d:?\d\d)?$/i;
/** A day's fraction, as a spreadsheet keeps a time: alone, or after a serial day. */
const FRACTION = /^(?:\d{5}|0)?[.,](\d+)$/;

/**
 * The time of day in a text such as `09:14`, `2:14:30 PM` or `2026-11-03T09:14:30Z`, as a fraction of a
 * day. The offset to universal time is passed over: what counts is the clock on site.
 *
 * @example readTime("6:00 PM") // 0.75
 */
export const readTime = (text: string): number | undefined => {
  const written = text.trim().slice(-40);
  const [, hour, minute, second, half] = TIME.exec(written) ?? [];
  if (minute === undefined) {
    const fraction = FRACTION.exec(written)?.[1];
    return fraction === undefined ? undefined : Number(`0.${fraction}`);
  }
  const [hours, minutes, seconds] = [Number(hour), Number(minute), Number(second ?? 0)];
  if (minutes > 59 || seconds > 59 || hours > (half ? 12 : 23) || (half && hours === 0))
    return undefined;
  const noon = half === undefined ? hours : (hours % 12) + (/p/i.test(half) ? 12 : 0);
  return (noon * 3600 + minutes * 60 + seconds) / 86400;
};

const [ZERO, COLON] = [48, 58];

/**
 * A time of day written as `09:14:30` between two places of a text, as a fraction of a day; undefined for
 * any other writing, which `readTime` may know. Long exports have millions of them.
 *
 * @example readClock("L1;06:00:00;31", 3, 11) // 0.25
 */
export const readClock = (text: string, from: number, to: number): number | undefined => {
  if (to - from !== 8) return undefined;
  if (text.charCodeAt(from + 2) !== COLON || text.charCodeAt(from + 5) !== COLON) return undefined;
  const hours = twoDigits(text, from);
  const minutes = twoDigits(text, from + 3);
  const seconds = twoDigits(text, from + 6);
  return hours < 24 && minutes < 60 && seconds < 60
    ? (hours * 3600 + minutes * 60 + seconds) / 86400
    : undefined;
};

/** The number that two figures stand for; 100 where they are none. */
const twoDigits = (text: string, at: number): number => {
  const tens = text.charCodeAt(at) - ZERO;
  const ones = text.charCodeAt(at + 1) - ZERO;
  return tens >= 0 && tens <= 9 && ones >= 0 && ones <= 9 ? tens * 10 + ones : 100;
};
