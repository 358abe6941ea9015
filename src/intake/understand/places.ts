import { isSameSort, objectKey } from "../rows/candidates";
import type { RecordRows } from "../rows/recordRows";
import { checkItem } from "../words/checkItem";
import { plainWords } from "../words/plainWords";
import type { Sense } from "../words/senses";
import { hasMeaning, hasWord, type NameToken, nameTokens } from "./nameTokens";

/** A part of a panel or section that records are of. */
export interface NamedPlace {
  readonly object: string;
  readonly part: string;
  readonly tokens: readonly NameToken[];
  /** What is given of it that a name may say beside its words: the size of its bolts. */
  readonly given: readonly NameToken[];
  /** Comparable forms of what stands in the panel under a designation that no other panel has. */
  readonly devices: readonly string[];
}

/**
 * The places that the rows of tables are of, each once.
 *
 * @param devices panels by the comparable designations of what stands in them
 */
export const placesOf = (
  tables: readonly RecordRows[],
  devices: ReadonlyMap<string, string> = new Map(),
): NamedPlace[] => {
  const devicesIn = new Map<string, string[]>();
  for (const [device, object] of devices)
    devicesIn.set(object, [...(devicesIn.get(object) ?? []), device]);
  const places = new Map<string, NamedPlace>();
  for (const { rows } of tables)
    for (const row of rows) {
      const [object, part] = [String(row.object ?? "").trim(), String(row.part ?? "").trim()];
      const key = `${object}\n${part}`;
      if (!places.has(key))
        places.set(key, {
          object,
          part,
          tokens: [...nameTokens(object), ...nameTokens(part)],
          given: nameTokens(String(row.bolt ?? "")),
          devices: devicesIn.get(object) ?? [],
        });
    }
  return [...places.values()];
};

/** A word that says no more than that a circuit is meant, as in "close circuit", "CT leads". */
const isCircuit = ({ senses }: NameToken): boolean =>
  senses.some((sense) => sense === "circuits" || sense === "circuit" || sense === "wiring");

/**
 * What every part has: words of these say nothing where none of the records' own names speaks of it, as in
 * `Busbar joints`, `Breaker poles`, and all words are known: "Cubicle 1" is no "Bus 1".
 */
const OF_ALL: ReadonlySet<Sense> = new Set<Sense>([
  ...(["joint", "bolt", "part", "place", "panel", "phase", "contact", "coil"] as const),
  "secondary",
]);
const isOfAll = (places: readonly NamedPlace[], token: NameToken): boolean =>
  token.senses.length > 0 &&
  token.senses.every((sense) => OF_ALL.has(sense)) &&
  !places.some(({ tokens }) => hasMeaning(tokens, token));

/** No name of a panel and its part is longer. */
const LONGEST_NAME = 100;

/**
 * The places that a text names among others: by the panel or section, by the part as it is written, else
 * by all of its words, which the names of panel and part have between them, else by what stands in the panel.
 *
 * @example placesNamed(places, "Q0 of J03") // the breaker Q0 of +J03
 */
export const placesNamed = (places: readonly NamedPlace[], text: string): readonly NamedPlace[] => {
  if (text.length > LONGEST_NAME) return [];
  const key = objectKey(text);
  const ofObject =
    key === ""
      ? []
      : places.filter(({ object }) => objectKey(object) === key && isSameSort(text, object));
  if (ofObject.length > 0) return ofObject;
  const plain = plainWords(text);
  const ofPart = places.filter(({ part }) => plainWords(part) === plain);
  if (ofPart.length > 0) return ofPart;
  const item = checkItem(text);
  if (item !== undefined) return places.filter(({ part }) => part === item);
  const tokens = nameTokens(text);
  if (tokens.length === 0) return [];
  const all = (has: typeof hasWord) =>
    places.filter((place) => {
      const own = tokens.filter((token) => !hasWord(place.given, token));
      return own.length > 0 && own.every((token) => has(place.tokens, token));
    });
  const written = all(hasWord);
  if (written.length > 0) return written;
  const ofDevice = places.filter(({ devices }) => devices.includes(key));
  if (ofDevice.length > 0) return ofDevice;
  const meant = all(hasMeaning);
  const isNamed = tokens.some(({ senses }) => senses.length === 0);
  const telling = tokens.filter(
    (token) => !isCircuit(token) && (isNamed || !isOfAll(places, token)),
  );
  return meant.length > 0 || telling.length === 0 || telling.length === tokens.length
    ? meant
    : places.filter((place) => telling.every((token) => hasMeaning(place.tokens, token)));
};
