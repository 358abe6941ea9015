import type { Finding, Weight } from "../../check/findings/finding";
import type { Messages } from "../../messages/messages";
import { serialDay } from "../../quantities/dates";
import type { Unit } from "../../quantities/units";
import type { Basis } from "../../standards/criterion";
import type { Block, Entry, Survey } from "../find/block";
import { dayOf } from "../understand/dayOf";

/** What the check of a surveyed workbook goes by. */
export interface SurveyContext {
  readonly survey: Survey;
  /** The day of the check, as a serial number. */
  readonly today: number;
  /** Rated voltage of the switchgear, kV. */
  readonly ratedkV?: number;
  readonly basis?: Basis;
  readonly text: Messages["survey"];
}

/** One rule of the check of a workbook in somebody's own layout. */
export interface SurveyRule {
  readonly id: string;
  readonly find: (context: SurveyContext) => readonly Finding[];
}

/** A finding at a cell of an entry. */
export const findingAt = (
  rule: string,
  weight: Weight,
  block: Block,
  entry: Pick<Entry, "kind" | "panel" | "position" | "stage">,
  address: string,
  message: string,
  more: Partial<Finding> = {},
): Finding => ({
  rule,
  weight,
  record: entry.kind,
  ...(entry.panel === "" ? {} : { panel: entry.panel }),
  sheet: block.sheet,
  address,
  row: [entry.panel, entry.position, entry.stage ?? ""].filter((part) => part !== "").join(", "),
  message,
  ...more,
});

/** A finding about a block as a whole, at its first cell. */
export const findingOn = (
  rule: string,
  weight: Weight,
  block: Block,
  message: string,
): Finding => ({
  rule,
  weight,
  record: block.kinds[0],
  sheet: block.sheet,
  address: block.range.split(":")[0] ?? "A1",
  message,
});

/** A number with its unit as people write it. */
export const written = (number: number, unit?: Unit): string =>
  `${Number(number.toPrecision(4))}${unit === undefined ? "" : ` ${unit}`}`;

/** A day as people of all countries read it. */
export const writtenDay = (day: number): string => serialDay(day);

/** The day on which a reading was taken. */
export const dayOfEntry = ({ beside, facts }: Entry): number | undefined =>
  (beside.date && dayOf(beside.date)) ?? facts.day;

/** What most of several values are, where that is clear: at least the share asked for, of at least four. */
export const mostOf = <T>(
  values: readonly T[],
  share = 0.75,
): { value: T; times: number } | undefined => {
  const counts = new Map<T, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  const [first] = [...counts].sort((one, other) => other[1] - one[1]);
  return first && values.length >= 4 && first[1] >= values.length * share
    ? { value: first[0], times: first[1] }
    : undefined;
};

/** The middle of several numbers. */
export const middleOf = (numbers: readonly number[]): number => {
  const sorted = [...numbers].sort((one, other) => one - other);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
};
