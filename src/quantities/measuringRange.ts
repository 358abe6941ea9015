import { convert } from "./convert";
import { readUnit } from "./reading/readUnit";
import { type Unit, unitSize } from "./units";

/** What an instrument measures within: from `least`, 0 where nothing is said, to `most`. */
export interface MeasuringRange {
  readonly least?: number;
  readonly most: number;
  readonly unit: string;
}

const BETWEEN = "; ";

/**
 * Ranges in one cell.
 *
 * @example writeRanges([{ most: 5, unit: "TΩ" }, { least: 250, most: 5000, unit: "V" }]) // "0 to 5 TΩ; 250 to 5000 V"
 */
export const writeRanges = (ranges: readonly MeasuringRange[]): string =>
  ranges.map(({ least = 0, most, unit }) => `${least} to ${most} ${unit}`).join(BETWEEN);

/** What such a cell says; what is no range is left out. */
export const readRanges = (text: string): MeasuringRange[] =>
  text.split(BETWEEN).flatMap((part) => {
    const [, least, most, unit] = /^(-?[\d.e+-]+) to (-?[\d.e+-]+) (.+)$/.exec(part.trim()) ?? [];
    return unit === undefined ? [] : [{ least: Number(least), most: Number(most), unit }];
  });

/** The ends of a range belong to it, whatever the arithmetic of units leaves of them. */
const NEAR = 1e-9;

/**
 * Whether a value lies within one of these ranges of its quantity; undefined where none is of its quantity.
 *
 * @example isWithin(300_000, "MΩ", [{ most: 200, unit: "GΩ" }]) // false
 */
export const isWithin = (
  value: number,
  unit: Unit,
  ranges: readonly MeasuringRange[],
): boolean | undefined => {
  const spans = ranges.flatMap(({ least = 0, most, unit: written }) => {
    const own = readUnit(written);
    if (!own.ok || unitSize(own.value).quantity !== unitSize(unit).quantity) return [];
    const [low, high] = [convert(least, own.value, unit), convert(most, own.value, unit)];
    return low.ok && high.ok ? [{ low: low.value, high: high.value }] : [];
  });
  const near = NEAR * Math.abs(value);
  return spans.length === 0
    ? undefined
    : spans.some(({ low, high }) => value >= low - near && value <= high + near);
};

/** An Id without spaces and in one case; a comma stands for a semicolon. */
const plain = (id: string): string => id.replaceAll(" ", "").replaceAll(",", ";").toLowerCase();

/**
 * Whether a cell names this instrument: alone, or among several with commas or semicolons between them.
 *
 * @example isNamedIn("IR-1; TH-2", "th-2") // true
 */
export const isNamedIn = (cell: string, id: string): boolean =>
  plain(id) !== "" && `;${plain(cell)};`.includes(`;${plain(id)};`);
