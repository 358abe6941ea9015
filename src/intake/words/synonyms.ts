import * as z from "zod/mini";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { answer, type Result, refuse } from "../../quantities/result";
import { repeatedKeys } from "../../records/repeatedKeys";
import { isField } from "./fields";
import { OTHER_LANGUAGES } from "./languages/languages";
import { plainWords } from "./plainWords";

/** Words that titles use for a field: field -> words. */
export type Synonyms = Readonly<Record<string, readonly string[]>>;

/**
 * The words of both, each once.
 *
 * @example joinedWords({ object: ["Veld"] }, { object: ["Kast"] }) // { object: ["Veld", "Kast"] }
 */
export const joinedWords = (one: Synonyms = {}, other: Synonyms = {}): Synonyms =>
  Object.fromEntries(
    [...new Set([...Object.keys(one), ...Object.keys(other)])].map((field) => [
      field,
      [...new Set([...(one[field] ?? []), ...(other[field] ?? [])])],
    ]),
  );

/** Tells the field that a title without its unit names, where it is known. */
export type TitleWords = (title: string) => string | undefined;

/**
 * The reader of titles in other languages and in a user's own words.
 *
 * @param own the user's words, which come before the shipped ones
 * @example titleWords({ object: ["Schakelveld"] })("schakelveld") // "object"
 */
export const titleWords = (own?: Synonyms): TitleWords => {
  if (own === undefined) return shipped;
  const fields = fieldsBy([own]);
  return (title) => fields.get(plainWords(title)) ?? shipped(title);
};

const fieldsBy = (all: readonly Synonyms[]): ReadonlyMap<string, string> => {
  const fields = new Map<string, string>();
  for (const synonyms of all)
    for (const [field, words] of Object.entries(synonyms))
      for (const word of words) {
        const plain = plainWords(word);
        if (!fields.has(plain)) fields.set(plain, field);
      }
  return fields;
};

const SHIPPED_FIELDS = fieldsBy(OTHER_LANGUAGES.map(({ titles }) => titles));
const shipped: TitleWords = (title) => SHIPPED_FIELDS.get(plainWords(title));

/** What a synonym file holds. */
export const synonymFile = z.record(
  z.string(),
  z.array(z.string().check(z.minLength(1), z.maxLength(80))).check(z.maxLength(200)),
);

/**
 * A synonym file: a JSON object of field and list of words.
 *
 * @example readSynonyms('{"object": ["Schakelveld"]}') // { object: ["Schakelveld"] }
 */
export const readSynonyms = (json: string): Result<Synonyms, Told> => {
  try {
    const read = synonymFile.safeParse(JSON.parse(json));
    const [twice] = repeatedKeys(json);
    if (twice) return refuse("wrong", ({ files }) => files.twice(quoted(twice.key), twice.line));
    const unknown = read.success
      ? Object.keys(read.data).find((field) => !isField(field))
      : undefined;
    if (read.success && unknown === undefined) return answer(read.data);
    return refuse("wrong", ({ intake: { words } }) =>
      unknown === undefined ? words.noList : words.unknownField(quoted(unknown)),
    );
  } catch {
    return refuse("wrong", ({ intake }) => intake.words.noJson);
  }
};
