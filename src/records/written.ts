import type { Sense } from "../standards/judge";
import { type CellValue, type Column, type RecordKind, type Row, sameWord } from "./kind";

/** Figures of a worked-out number: one more than a reading has that an instrument shows with three. */
const FIGURES = 4;
/** Figures of a limit that is worked out: it is what others are compared with. */
const LIMIT_FIGURES = 6;
/** As many as a spreadsheet keeps. */
const MOST_FIGURES = 15;

/** A computed number can be trusted to twelve figures. */
const DUST = 1e-12;

/** Which way a number is shortened. */
type Way = "near" | "down" | "up";

/**
 * A cell of a computed row as a test engineer writes it. What was typed stands as it is. A worked-out number
 * has the decimals of its column and at most four figures; more where it would otherwise seem to lie on the
 * other side of its limit. A limit that is worked out is never written higher than it is.
 *
 * @returns blank for a blank cell; text as it stands
 * @example written(contact, { corrected: 18.02041 }, "corrected") // "18.02"
 */
export function written({ columns, accepted, enough }: Judged, row: Row, id: string): string {
  const cell = row[id] ?? null;
  const column = columns.find((one) => one.id === id);
  const comparisons = [...accepted, ...enough];
  const isLimit = column?.role === "limit" || column?.side !== undefined;
  const limited = comparisons.find(({ limit }) => limit === id);
  if (isLimit || limited) {
    const format = columns.find((one) => one.id === limited?.value)?.format;
    return limitAs(cell, format?.endsWith("%") === true);
  }
  if (column?.role !== "computed") return textOf(cell);
  const beside = comparisons
    .filter(({ value }) => value === id)
    .flatMap(({ limit, lenient = limit, sense, tolerance = 0 }) =>
      edges([row[limit], row[lenient]], sense, tolerance),
    );
  return writtenAs(cell, column, beside);
}

/** A limit, in percent where what it is the limit of is shown in percent. */
function limitAs(cell: CellValue, percent: boolean): string {
  if (typeof cell !== "number") return textOf(cell);
  const text = shortened(percent ? cell * 100 : cell, 0, LIMIT_FIGURES, "down");
  return percent ? `${text} %` : text;
}

type Judged = Pick<RecordKind, "columns" | "accepted" | "enough">;

const textOf = (cell: CellValue): string => String(cell ?? "");

/** The numbers at which a verdict changes. */
const edges = (
  limits: readonly (CellValue | undefined)[],
  sense: Sense,
  tolerance: number,
): number[] =>
  limits.flatMap((limit) => {
    if (typeof limit !== "number") return [];
    const far = limit + (sense === "least" ? -1 : 1) * Math.abs(limit) * tolerance;
    return sense === "within" ? [far, -far] : [limit, far];
  });

/** A computed cell in the form of its column: a number, a bound (`> 9400000`), or text. */
function writtenAs(cell: CellValue, { format }: Column, beside: readonly number[]): string {
  const bound = typeof cell === "string" ? /^([<>]) ([\d.e+-]+)$/.exec(cell) : undefined;
  if (bound)
    return `${bound[1]} ${byForm(Number(bound[2]), format, [], sameWord(bound[1], ">") ? "down" : "up")}`;
  return typeof cell === "number" ? byForm(cell, format, beside, "near") : textOf(cell);
}

function byForm(
  number: number,
  format: string | undefined,
  beside: readonly number[],
  way: Way,
): string {
  if (format === undefined) return String(Number(number.toPrecision(LIMIT_FIGURES)));
  const percent = format.endsWith("%");
  const times = percent ? 100 : 1;
  const [, decimals = ""] = /\.([0#]+)/.exec(format) ?? [];
  const least = decimals.replaceAll("#", "").length;
  let text = "";
  for (let more = 0; more <= MOST_FIGURES; more++) {
    text = shortened(number * times, least, FIGURES + more, way, decimals.length + more);
    const isTrue = beside.every(
      (edge) => sideOf(Number(text), edge * times) === sideOf(number * times, edge * times),
    );
    if (isTrue) break;
  }
  return percent ? `${text} %` : text;
}

/** Below an edge, on it as far as a computed number can be trusted, or above. */
const sideOf = (number: number, edge: number): number =>
  Math.abs(number - edge) <= Math.abs(edge) * DUST ? 0 : Math.sign(number - edge);

/**
 * A number with so many figures, and no more decimals than are told.
 *
 * @param least decimals that are written though they are 0
 */
function shortened(
  number: number,
  least: number,
  figures: number,
  way: Way,
  most = Number.POSITIVE_INFINITY,
): string {
  const exact = Number(number.toPrecision(MOST_FIGURES));
  if (Math.abs(exact) < DUST) return (0).toFixed(Math.min(least, most));
  const place = Math.min(most, figures - 1 - Math.floor(Math.log10(Math.abs(exact))));
  // A limit keeps all its figures before the point, whatever they are.
  const at = most === Number.POSITIVE_INFINITY ? Math.max(0, place) : place;
  const steps = Number((exact * 10 ** at).toPrecision(MOST_FIGURES));
  const whole = { near: Math.round, down: Math.floor, up: Math.ceil }[way](steps);
  const text = (Math.abs(whole) === 0 ? 0 : whole / 10 ** at).toFixed(Math.max(0, at));
  return withDecimals(text, least);
}

/** Without the zeros that end it, but for so many decimals. */
function withDecimals(text: string, least: number): string {
  const [whole = "", decimals = ""] = text.split(".");
  const telling = [...decimals].findLastIndex((digit) => digit !== "0") + 1;
  const kept = decimals.slice(0, Math.max(telling, least));
  return kept === "" ? whole : `${whole}.${kept}`;
}
