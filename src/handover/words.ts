import { serialDay } from "../quantities/dates";
import { KINDS } from "../records/kinds";
import type { HandedCell } from "./content";

const DATES: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ id, columns }) =>
    columns
      .filter(({ accepts, format }) => accepts?.type === "date" || /y/.test(format ?? ""))
      .map(({ header }) => `${id}|${header}`),
  ),
);

/** Digits of a worked-out value on paper; a reading and a limit stand as they are. */
const DIGITS = 6;

/** A cell's value as the report prints it. */
export const shown = (record: string, { column, role, value }: HandedCell): string => {
  if (typeof value !== "number") return String(value);
  if (DATES.has(`${record}|${column}`)) return dayAndTime(value);
  return role === "computed" ? String(Number(value.toPrecision(DIGITS))) : String(value);
};

const MINUTES = 1440;

/** A serial day, with the time where it has one. */
function dayAndTime(serial: number): string {
  const minutes = Math.round((serial % 1) * MINUTES);
  const time = [Math.floor(minutes / 60), minutes % 60].map((part) =>
    String(part).padStart(2, "0"),
  );
  return minutes === 0
    ? serialDay(Math.floor(serial))
    : `${serialDay(Math.floor(serial))} ${time.join(":")}`;
}

/** The sources that a record names, one by one; a semicolon within brackets belongs to its source. */
export const sourcesIn = (sources: string): string[] =>
  sources.split(/; (?![^()]*\))/).filter(Boolean);
