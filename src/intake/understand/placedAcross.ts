import { groupBy } from "../../quantities/groupedBy";
import { areSchemeLetters } from "../words/readPosition";

/** A panel or section with one of its phases, as a title names both. */
interface Placed {
  readonly object: string;
  readonly position: string;
}

const PHASE = /^(\S.*?)[\s,/–-]{1,3}(L[123]|[RYSTABCUVW])$/;

/** A unit in brackets at its end; outside of them a letter is a phase. */
const UNIT = /[([][^()[\]]*[)\]]\s*$/;

const phasesOf = (some: readonly Placed[]): readonly string[] =>
  some.map(({ position }) => position);

/**
 * The titles of a line that name a panel or section and a phase of it, where these are all three phases of
 * each: `Bus 1 A`, `Bus 1 B`, `Bus 1 C`.
 *
 * @param objectOf the panel or section that a text names
 */
export const placedAcross = (
  line: readonly string[],
  objectOf: (text: string) => string | undefined,
): ReadonlyMap<string, Placed> => {
  const found = line.flatMap((title): [string, Placed][] => {
    if (title.length > LONGEST) return [];
    const [, name = "", position = ""] = PHASE.exec(title.replace(UNIT, "").trim()) ?? [];
    const object = name.length < SHORTEST ? undefined : objectOf(name);
    return object === undefined ? [] : [[title, { object, position }]];
  });
  const areAll = groupBy(found, ([, { object }]) => object).every((own) => {
    const phases = phasesOf(own.map(([, placed]) => placed));
    return phases.length === 3 && (areSchemeLetters(phases) || new Set(phases).size === 3);
  });
  return new Map(areAll ? found : []);
};
const LONGEST = 60;
/** A shorter one is a symbol sooner than a panel's name: `t A` is a time of pole A, not the panel 52-T. */
const SHORTEST = 3;
