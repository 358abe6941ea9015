import { readUnit } from "../../quantities/reading/readUnit";
import { splitReading } from "../../quantities/reading/splitReading";
import type { Unit } from "../../quantities/units";
import { isDesignation } from "../text/textCells";
import { readDate, readTime } from "../words/readDate";
import { withoutWave } from "../words/wave";

/** What the cells of a column look like, by the first lines below its title. */
export interface ColumnTexts {
  /** The texts of its cells that are not blank. */
  readonly texts: readonly string[];
  /** On which of the lines these stand. */
  readonly lines: readonly number[];
  /** Which of them are numbers, with or without bound and unit, from 0 to 1. */
  readonly numeric: number;
  readonly dates: number;
  readonly times: number;
  /** The unit that most of its numbers carry. */
  readonly unit?: Unit;
  /** Its numbers as they stand, a comma read as a point. */
  readonly values: readonly number[];
}

export const columnTexts = (all: readonly string[]): ColumnTexts => {
  const filled = all
    .map((text, line) => ({ text: text.trim(), line }))
    .filter(({ text }) => text !== "" && !isDash(text));
  const texts = filled.map(({ text }) => text);
  const share = (is: (text: string) => boolean) =>
    texts.length === 0 ? 0 : texts.filter(is).length / texts.length;
  const readings = texts.flatMap((text) => {
    const parts = isDate(text) ? undefined : splitReading(text);
    const isNumber = parts && (parts.number !== "" || parts.over) && !isDesignation(text);
    return isNumber ? [parts] : [];
  });
  const measured = readings.filter(
    ({ unit }) =>
      unit === "" || unit.startsWith("(") || withoutWave(unit.replace(BRACKETS, "")).length < 12,
  );
  const units = measured.flatMap(({ unit }) => {
    const written = withoutWave(unit);
    const read = readUnit(written, "MΩ");
    const loose = read.ok ? read : readUnit(written);
    return unit !== "" && loose.ok ? [loose.value] : [];
  });
  return {
    texts,
    lines: filled.map(({ line }) => line),
    numeric: texts.length === 0 ? 0 : measured.length / texts.length,
    dates: share(isDate),
    times: share((text) => text.includes(":") && readTime(text) !== undefined),
    unit: mostOften(units),
    values: measured.flatMap(({ number, exponent }) => {
      const value = Number(`${number.replace(",", ".").replace(/[ ']/g, "")}e${exponent || 0}`);
      return Number.isFinite(value) ? [value] : [];
    }),
  };
};

/** What stands in brackets after a unit: a remark, or what a pressure is above. */
const BRACKETS = /(?<!\s)\s?\([^()]{0,60}\)$/;

/** What is written where there is nothing to write. */
const isDash = (text: string) => /^[-–—.]+$/.test(text);

const isDate = (text: string): boolean => {
  const day = text.split(/[ T](?=\d{1,2}:)/, 1)[0] ?? "";
  return !/^\d{5}(?:[.,]\d+)?$/.test(day) && readDate(day, "day-first").ok;
};

export const mostOften = <T>(items: readonly T[]): T | undefined => {
  const counts = new Map<T, number>();
  for (const item of items) counts.set(item, (counts.get(item) ?? 0) + 1);
  return [...counts].sort(([, one], [, other]) => other - one)[0]?.[0];
};
