import { type Sense, sensesOf } from "../words/senses";

/** What parts of a panel are told apart by. */
const PARTS: ReadonlySet<Sense> = new Set<Sense>(["breaker", "joint", "cable", "earthbar"]);
/** That a test is one across the open poles of a breaker; of a text that speaks of earth as well, some lines of it only. */
const OPEN_POLES: Sense = "openpole";

/**
 * The parts of a panel that a text speaks of, open poles among them.
 *
 * @example partsSpoken("Resistencia de los polos del interruptor") // breaker
 */
export const partsSpoken = (text: string): ReadonlySet<Sense> => {
  const { senses } = sensesOf(text);
  const parts = [...senses].filter((sense) => PARTS.has(sense));
  return new Set(senses.has(OPEN_POLES) && !senses.has("earth") ? [...parts, OPEN_POLES] : parts);
};

/** A position as written where its table is said to be one across open poles: `Pole A` is `Pole A open`. */
export const acrossOpen = (position: string, about: ReadonlySet<Sense> | undefined): string =>
  position !== "" && about?.has(OPEN_POLES) && !sensesOf(position).senses.has(OPEN_POLES)
    ? `${position} open`
    : position;

/** Those of some parts that are of what is spoken of, where this tells them apart from all others. */
export const ofSpoken = <T extends { readonly part: string }>(
  rows: readonly T[],
  spoken: ReadonlySet<Sense> | undefined,
): readonly T[] => {
  const about = [...(spoken ?? [])].filter((sense) => PARTS.has(sense));
  const [only] = about;
  if (only === undefined || about.length > 1 || rows.length < 2) return rows;
  const of = rows.filter(({ part }) => partsSpoken(part).has(only));
  const isTold = rows.every(({ part }) => partsSpoken(part).size === 1);
  return isTold && of.length > 0 ? of : rows;
};
