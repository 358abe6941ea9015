import { splitTitle } from "../intake/words/readTitle";
import { readUnit } from "../quantities/readUnit";
import type { Unit } from "../quantities/units";
import { latin } from "./localWords";
import { conceptOf } from "./words/sheetWords";
import type { Concept } from "./words/words";

const KNOWN = new Map<string, Unit | undefined>();
const MAX_KNOWN = 20_000;

/**
 * The unit that a title or label carries, at its end or in it.
 *
 * @example unitIn("µΩ at 100 A DC") // "µΩ"
 */
export const unitIn = (text: string): Unit | undefined => {
  if (KNOWN.has(text)) return KNOWN.get(text);
  const found = text.length > 160 ? undefined : read(text);
  if (KNOWN.size > MAX_KNOWN) KNOWN.clear();
  KNOWN.set(text, found);
  return found;
};

const read = (written: string): Unit | undefined => {
  const text = latin(written);
  // A letter alone is a phase as often as a unit.
  if (/^\p{L}$/u.test(text)) return undefined;
  const bracket = /[([]\s*([^()[\]]{1,12}?)\s*(?:AC|DC)?\s*[)\]]/iu.exec(text)?.[1];
  const inside = bracket === undefined ? undefined : readUnit(bracket);
  if (inside?.ok) return inside.value;
  const { name, unit } = splitTitle(text);
  const last = text.split(/[\s,]+/).at(-1) ?? "";
  const isLetter = /^\p{L}$/u.test(last);
  const isUnit = isLetter ? LETTERED.includes(conceptOf(text)) : !NO_UNITS.test(last);
  if (unit !== undefined && name !== "" && !/\d$/.test(name) && isUnit) return unit;
  const words = text.split(/[\s,;:()[\]?]+/);
  for (const [index, word] of words.entries()) {
    // "at 5 kV" is a condition, and no unit of the values.
    if (word.length < 2 || /\d/.test(word) || /^[\d.,]+$/.test(words[index - 1] ?? "")) continue;
    const found = readUnit(word.replace(/^(k?v)(?:dc|ac)$/i, "$1"));
    if (found.ok && !NO_UNITS.test(word)) return found.value;
  }
  return name === "" ? unit : undefined;
};

/** What is titled with a letter for its unit: "I A", "Prim A", "T C"; others have phases after them. */
const LETTERED: readonly (Concept | undefined)[] = [
  "current",
  "primary",
  "secondary",
  "temperature",
  "air",
  "voltage",
  "duration",
];

/** Words that are units elsewhere and prepositions or articles here. */
const NO_UNITS = /^(?:in|t|m|min|mins|minutes?|max|metres?|meters?|feet|foot|pounds?|secs?)\.?$/i;
