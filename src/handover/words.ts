import { serialDay } from "../quantities/dates";
import type { Row } from "../records/kind";
import { KINDS } from "../records/kinds";
import { written } from "../records/written";
import type { HandedRow } from "./content";

const DATES: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ id, columns }) =>
    columns
      .filter(({ accepts, format }) => accepts?.type === "date" || /y/.test(format ?? ""))
      .map(({ header }) => `${id}|${header}`),
  ),
);

/** The cells of a row as the report prints them, by the header of their column. */
export function shownCells({ record, cells }: Pick<HandedRow, "record" | "cells">) {
  const kind = KINDS.find(({ id }) => id === record);
  const ids = new Map(kind?.columns.map(({ id, header }) => [header, id]));
  const row: Row = Object.fromEntries(cells.map(({ column, value }) => [ids.get(column), value]));
  return new Map(
    cells.map(({ column, value }) => {
      const id = ids.get(column);
      if (!kind || id === undefined) return [column, String(value)] as const;
      const isDate = typeof value === "number" && DATES.has(`${record}|${column}`);
      return [column, isDate ? dayAndTime(value) : written(kind, row, id)] as const;
    }),
  );
}

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
