import { splitTitle } from "../intake/words/readTitle";
import { readUnit } from "../quantities/readUnit";
import type { Unit } from "../quantities/units";

const KNOWN = new Map<string, Unit | undefined>();
const MAX_KNOWN = 20_000;

/**
 * The unit that a title or label carries, at its end or in it.
 *
 * @example unitIn("µΩ at 100 A DC") // "µΩ"
 */
export const unitIn = (text: string): Unit | undefined => {
  if (KNOWN.has(text)) return KNOWN.get(text);
  const found = text.length > 80 ? undefined : read(text);
  if (KNOWN.size > MAX_KNOWN) KNOWN.clear();
  KNOWN.set(text, found);
  return found;
};

const read = (text: string): Unit | undefined => {
  // A letter alone is a phase as often as a unit.
  if (/^\p{L}$/u.test(text)) return undefined;
  const bracket = /[([]\s*([^()[\]]{1,12}?)\s*(?:AC|DC)?\s*[)\]]/iu.exec(text)?.[1];
  const inside = bracket === undefined ? undefined : readUnit(bracket);
  if (inside?.ok) return inside.value;
  for (const word of text.split(/[\s,;()[\]]+/))
    if (word.length > 1 && !/\d/.test(word)) {
      const unit = readUnit(
        word.replace(/^[vV](?:DC|AC)$/i, "V").replace(/^k[vV](?:DC|AC)$/i, "kV"),
      );
      if (unit.ok && !NO_UNITS.test(word)) return unit.value;
    }
  const { name, unit } = splitTitle(text);
  return name.length > 1 ? unit : undefined;
};

/** Words that are units elsewhere and prepositions or articles here. */
const NO_UNITS =
  /^(?:in|t|min|mins|minutes?|max|m|a|c|f|metre|meter|meters|feet|foot|pound|mins?\.)$/i;
