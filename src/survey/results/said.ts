import { quoted } from "../../records/columns/common";
import type { CellValue } from "../../records/kind";

/** What one of our cells holds: the formula, and what it comes to now. */
export interface Said {
  readonly value: CellValue;
  readonly formula?: string;
}

/** Something in a line that no number tells: it holds as long as a cell says what it says now. */
export interface Guard {
  readonly address: string;
  /** What stands there now. */
  readonly value: CellValue;
  readonly verdict: "Fail" | "Inconclusive";
  readonly reason: string;
}

const VERDICTS = ["Fail", "Missing", "Inconclusive", "Pass"] as const;
const ORDER = `{${VERDICTS.map(quoted).join(",")}}`;

/** The worst of several verdicts, and the formula for it. */
export const worst = (all: readonly Said[]): Said => {
  const [first] = all;
  if (first && all.length === 1) return first;
  const ranks = all.map(({ value }) => VERDICTS.indexOf(value as (typeof VERDICTS)[number]));
  const places = all.map(({ formula }) => `MATCH(${formula},${ORDER},0)`);
  return {
    value: VERDICTS[Math.min(...ranks)] ?? "Inconclusive",
    formula: `INDEX(${ORDER},MIN(${places.join(",")}))`,
  };
};

/** Longest text that a formula of ours holds between quotes; a spreadsheet takes 255 characters. */
const MAX_QUOTED = 200;

/** A formula's test for a cell that holds what it holds now. */
export const stillSays = ({ address, value }: Pick<Guard, "address" | "value">): string => {
  if (typeof value === "number") return `${address}=${value}`;
  if (typeof value === "boolean") return `${address}=${value ? "TRUE" : "FALSE"}`;
  const text = (value ?? "").replace(/ +/g, " ").trim();
  return text.length > MAX_QUOTED
    ? `LEFT(TRIM(${address}),${MAX_QUOTED})=${quoted(text.slice(0, MAX_QUOTED))}`
    : `TRIM(${address})=${quoted(text)}`;
};

/** A source, or the reasons of the guards while they hold. */
export const withReasons = (source: Said, guards: readonly Guard[]): Said => {
  const [first] = guards;
  if (!first) return source;
  const short = (text: string) => text.replace(/\s+/g, " ").slice(0, MAX_QUOTED);
  const otherwise = source.formula ?? quoted(String(source.value ?? ""));
  return {
    value: short(first.reason),
    formula: guards.reduceRight(
      (rest, guard) => `IF(${stillSays(guard)},${quoted(short(guard.reason))},${rest})`,
      otherwise,
    ),
  };
};
