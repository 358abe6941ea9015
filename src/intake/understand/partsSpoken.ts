import { type Sense, sensesOf } from "../words/senses";

/** What parts of a panel are told apart by. */
const PARTS: ReadonlySet<Sense> = new Set<Sense>(["breaker", "joint", "cable", "earthbar"]);

/**
 * The parts of a panel that a text speaks of.
 *
 * @example partsSpoken("Resistencia de los polos del interruptor") // breaker
 */
export const partsSpoken = (text: string): ReadonlySet<Sense> =>
  new Set([...sensesOf(text).senses].filter((sense) => PARTS.has(sense)));

/** Those of some parts that are of what is spoken of, where this tells them apart from all others. */
export const ofSpoken = <T extends { readonly part: string }>(
  rows: readonly T[],
  about: ReadonlySet<Sense> | undefined,
): readonly T[] => {
  if (about === undefined || about.size !== 1 || rows.length < 2) return rows;
  const [only] = about;
  const of = rows.filter(({ part }) => partsSpoken(part).has(only as Sense));
  const isTold = rows.every(({ part }) => partsSpoken(part).size === 1);
  return isTold && of.length > 0 ? of : rows;
};
