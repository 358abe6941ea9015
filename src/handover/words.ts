import { serialDay } from "../quantities/dates";
import { KINDS } from "../records/kinds";
import { SOURCES } from "../records/limits";
import type { HandedCell, HandedRow } from "./content";

const TRAIL: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ id, columns }) =>
    columns
      .filter(({ need, accepts }) => need === "trail" || accepts?.type === "date")
      .map(({ header }) => `${id}|${header}`),
  ),
);
const DATES: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ id, columns }) =>
    columns
      .filter(({ accepts, format }) => accepts?.type === "date" || /y/.test(format ?? ""))
      .map(({ header }) => `${id}|${header}`),
  ),
);

/** Columns that say where limits come from: told once below a table. */
const SOURCED: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ id, columns }) =>
    columns.filter((column) => column.id === SOURCES).map(({ header }) => `${id}|${header}`),
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

/** What a row recorded, what it is judged by, and who, when and with what. */
export function partsOf({ record, cells }: HandedRow): {
  readonly recorded: string;
  readonly judgedBy: string;
  readonly trail: string;
} {
  const isTrail = ({ column }: HandedCell) => TRAIL.has(`${record}|${column}`);
  const isEntry = ({ role }: HandedCell) => role === "entry" || role === "note";
  const words = (some: readonly HandedCell[]) =>
    some.map((cell) => `${cell.column}: ${shown(record, cell)}`).join("; ");
  return {
    recorded: words(cells.filter((cell) => isEntry(cell) && !isTrail(cell))),
    judgedBy: words(
      cells.filter(
        ({ role, column }) =>
          ["given", "limit", "computed"].includes(role) && !SOURCED.has(`${record}|${column}`),
      ),
    ),
    trail: cells
      .filter((cell) => isEntry(cell) && isTrail(cell))
      .map((cell) =>
        typeof cell.value === "number" && !DATES.has(`${record}|${cell.column}`)
          ? `${cell.column}: ${shown(record, cell)}`
          : shown(record, cell),
      )
      .join("\n"),
  };
}

/** The sources that a record names, one by one; a semicolon within brackets belongs to its source. */
export const sourcesIn = (sources: string): string[] =>
  sources.split(/; (?![^()]*\))/).filter(Boolean);
