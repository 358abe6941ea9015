import { createContext, useContext } from "react";
import { serialDay } from "../quantities/dates";
import { type CellValue, isBlank } from "../records/kind";

/** How the user's language writes numbers and days, and which way it runs. */
export interface Locale {
  readonly direction: "ltr" | "rtl";
  readonly number: (value: number) => string;
  readonly decimal: "." | ",";
  readonly day: (serial: number) => string;
}

const RIGHT_TO_LEFT = new Set(["ar", "he", "fa", "ur", "ps", "sd", "ug", "yi", "dv", "ku"]);

/** A language tag that is understood; English for one that is not, such as `en-US@posix`. */
const understood = (tag: string): string => {
  try {
    return Intl.getCanonicalLocales(tag)[0] ?? "en";
  } catch {
    return "en";
  }
};

/** @param tag a language as BCP 47 has it, e.g. `de-AT` */
export function localeOf(tag: string): Locale {
  const language = understood(tag);
  const numbers = new Intl.NumberFormat(language, {
    maximumSignificantDigits: 6,
    numberingSystem: "latn",
  });
  const days = new Intl.DateTimeFormat(language, {
    dateStyle: "medium",
    timeZone: "UTC",
    numberingSystem: "latn",
  });
  return {
    direction: RIGHT_TO_LEFT.has(language.slice(0, 2).toLowerCase()) ? "rtl" : "ltr",
    number: (value) => numbers.format(value),
    decimal: numbers
      .formatToParts(1.5)
      .some(({ type, value }) => type === "decimal" && value === ",")
      ? ","
      : ".",
    day: (serial) => days.format(new Date(`${serialDay(Math.floor(serial))}T00:00:00Z`)),
  };
}

export const LocaleContext = createContext(localeOf("en"));
export const useLocale = (): Locale => useContext(LocaleContext);

/** A cell as people read it; a dash where it holds nothing. */
export const shownCell = (
  locale: Locale,
  value: CellValue,
  { unit, date }: { readonly unit?: string | undefined; readonly date?: boolean } = {},
): string => {
  if (isBlank(value)) return "–";
  if (typeof value !== "number") {
    const bounded = /^([<>] )([\d.e+-]+)$/.exec(String(value));
    return bounded && unit
      ? `${bounded[1]}${locale.number(Number(bounded[2]))} ${unit}`
      : String(value);
  }
  if (date) return locale.day(value);
  return unit ? `${locale.number(value)} ${unit}` : locale.number(value);
};
