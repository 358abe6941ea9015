import type { Written } from "../table/written";
import { plainWords } from "../words/plainWords";
import { sensesOf } from "../words/senses";
import type { Knowledge, KnownKind } from "./knowledge";
import type { NamedPlace } from "./places";

/** No name over a table has more words. */
const MOST_WORDS = 3;

/** What is between the words of a heading. */
const APART = /[\s,;:()[\]"„“|/]+|\s[-–—]\s/u;

/** The names that may stand in a text: its words, and up to three of them together. */
const namesIn = (text: string): string[] => {
  const words = text
    .slice(0, 200)
    .split(APART)
    .filter((word) => word !== "" && word !== "-");
  return words.flatMap((_, at) =>
    Array.from({ length: MOST_WORDS }, (_none, more) => words.slice(at, at + more + 1)).flatMap(
      (some, more) => (some.length === more + 1 ? some.join(" ") : []),
    ),
  );
};

/** A designation, or several words: a single word or figure may be anything. */
const isName = (text: string): boolean => /\p{L}.*\d|\d.*\p{L}/u.test(text) || text.includes(" ");

/** The one thing that a text names, none where it names several. */
const only = (found: ReadonlySet<string>): string | undefined =>
  found.size === 1 ? [...found][0] : undefined;

/** The parts, of one panel or of all, that a text names by a designation of their own. */
const partsIn = (text: string, places: readonly NamedPlace[]): ReadonlySet<string> => {
  const names = new Set(namesIn(text).map(plainWords));
  return new Set(
    places.flatMap(({ part }) => (/[\d-]/.test(part) && names.has(plainWords(part)) ? part : [])),
  );
};

/** The phase that a word such as "phase" or "pole" names. */
const phasesIn = (text: string): ReadonlySet<string> => {
  const words = text.split(APART);
  return new Set(
    words.flatMap((word, at) => {
      const next = words[at + 1] ?? "";
      const isPhase = /^(?:L?[123]|[ABCRSTUVWY])$/.test(next);
      return isPhase && sensesOf(word).senses.has("phase") ? next : [];
    }),
  );
};

const objectsIn = (text: string, objectOf: Knowledge["objectOf"]): ReadonlySet<string> =>
  new Set(namesIn(text).flatMap((name) => (isName(name) ? (objectOf(name) ?? []) : [])));

/** Whether free words name one panel or section, or one phase, of their own. */
export const namesPlace = (text: string, objectOf: Knowledge["objectOf"]): boolean =>
  phasesIn(text).size === 1 || objectsIn(text, objectOf).size === 1;

/**
 * Where the readings of a table belong, as free words over it or the file's name tell: the panel or
 * section, a part that has a designation, a phase. The nearest text that names one counts; one that names
 * several names none, and neither does what stands over it.
 *
 * @param texts headings, the nearest last, after the name of the file
 * @example headedPlaces(["excitation M1 CTs", "CT-A phase B"], known, objectOf) // M1, CT-A, B
 */
export const headedPlaces = (
  texts: readonly string[],
  known: KnownKind,
  objectOf: Knowledge["objectOf"],
): Written[] => {
  const near = [...texts].reverse();
  const nearest = (read: (text: string) => ReadonlySet<string>): Omit<Written, "field">[] => {
    for (const title of near) {
      const found = read(title);
      const text = only(found);
      if (text !== undefined) return [{ title, text }];
      if (found.size > 1) return [];
    }
    return [];
  };
  const objects = nearest((text) => objectsIn(text, objectOf));
  const [object] = objects;
  const ofObject = object
    ? known.places.filter((place) => place.object === object.text)
    : known.places;
  const parts = nearest((text) => partsIn(text, ofObject));
  const phases = known.byPhase ? nearest(phasesIn) : [];
  return [
    ...objects.map((one) => ({ ...one, field: "object" })),
    ...parts.map((one) => ({ ...one, field: "part" })),
    ...phases.map((one) => ({ ...one, field: "position" })),
  ];
};
