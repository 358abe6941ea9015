import { readUnit } from "../../quantities/reading/readUnit";
import type { Sense } from "../words/senses";
import { areElapsed, clockSeconds } from "../words/timesAcross";
import type { SeenColumn } from "./columnScore";
import { NEUTRAL, SAID_BY_FILE } from "./columnSenses";
import type { Knowledge } from "./knowledge";
import { isPerson } from "./textFacts";

/** What a column is whatever the test: a field, or nothing that a workbook has a place for. */
export interface Role {
  readonly field?: string;
  /** Set where the file says it of itself, so that nothing is lost with it. */
  readonly spare?: string;
}

const isWhole = (text: string) => /^#?\d{1,6}$/.test(text.trim());

/** Numbers that go up by one, line by line, or are numbered so by their title. */
const isRunning = ({ cells: { texts }, title: { senses, words } }: SeenColumn): boolean => {
  if (senses.has("panel") || senses.has("section") || texts.length === 0) return false;
  const numbers = texts.map((text) => Number(/(\d+)\D*$/.exec(text.slice(0, 100))?.[1]));
  const goesUp = numbers.every((number, at) => at === 0 || number === (numbers[at - 1] ?? 0) + 1);
  return senses.has("number")
    ? texts.every((text) => /\d/.test(text) || text.length < 12) && (goesUp || texts.every(isWhole))
    : (texts.length > 2 || (texts.length > 1 && numbers[0] === 1)) &&
        goesUp &&
        texts.every(isWhole) &&
        words.every((word) => word.senses.some((sense) => sense === "item" || NEUTRAL.has(sense)));
};

const isInstrument = ({ cells: { texts } }: SeenColumn, { instruments }: Knowledge): boolean =>
  texts.length > 0 && texts.every((text) => instruments.has(text.trim().toLowerCase()));

const isUnits = ({ cells: { texts, numeric } }: SeenColumn): boolean =>
  texts.length > 0 && numeric === 0 && texts.every((text) => readUnit(text).ok);

/** Names of people, under a title that says no more than that names stand there. */
const isTester = ({ cells: { texts }, title: { senses, unknown } }: SeenColumn): boolean =>
  texts.length > 0 &&
  texts.every(isPerson) &&
  unknown === 0 &&
  [...senses].every((sense) => sense === "place" || sense === "by");

/** Times of day; those of a test that go up from its start are none, whatever is worked out below them. */
const isClock = ({ cells: { texts, times }, told }: SeenColumn): boolean =>
  times > 0.7 &&
  told === undefined &&
  !areElapsed(texts.filter((text) => clockSeconds(text) !== undefined));

const isOfTime = (sense: Sense) => sense === "time" || sense === "test";

/** What a column is that every record has, or that none has; undefined where it depends on the test. */
export const plainRole = (seen: SeenColumn, knows: Knowledge): Role | undefined => {
  const { title, cells } = seen;
  const { senses } = title;
  if (isInstrument(seen, knows)) return { field: "instrument" };
  if (cells.dates > 0.7)
    return { field: senses.has("date") || [...senses].every(isOfTime) ? "date" : undefined };
  if (isClock(seen)) return { field: "time" };
  if (isTester(seen)) return { field: "by" };
  if (isRunning(seen)) return { spare: "a running number" };
  if (isUnits(seen) && (senses.has("unit") || senses.size === 0)) return { field: "unit" };
  if (senses.has("unit") && cells.texts.length === 0) return { field: "unit" };
  const isSaid = [...senses].some((sense) => SAID_BY_FILE.has(sense));
  if (isSaid && cells.texts.length === 0) return { spare: "blank" };
  return undefined;
};
