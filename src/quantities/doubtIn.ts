import { DOUBTS, type Doubt, LANGUAGES } from "./doubts";

/** What a remark says, and the words that say so. */
interface Doubted {
  readonly doubt: Doubt;
  readonly words: string;
}

const all = Object.values(LANGUAGES);

/** Lower case, without accents, one space between words. */
const plain = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replaceAll("ß", "ss")
    .toLowerCase()
    .replace(/\s+/g, " ");

/** Any of some words as whole words. */
const anyOf = (words: readonly string[]): RegExp =>
  new RegExp(
    `(?<![\\p{L}\\p{N}])(?:${words
      .map(plain)
      .map((word) => (word.endsWith("-") ? `${word.slice(0, -1)}\\p{L}*` : word))
      .join("|")})(?![\\p{L}\\p{N}])`,
    "gu",
  );

const WORDS: ReadonlyMap<Doubt, RegExp> = new Map(
  DOUBTS.map((doubt) => [doubt, anyOf(all.flatMap(({ doubts }) => doubts[doubt]))]),
);
const NEGATION = anyOf(all.flatMap(({ negations }) => negations));
const SETTLED = anyOf(all.flatMap(({ settled }) => settled));

/** Senses that a negation is part of, or that nothing settles afterwards. */
const LASTING: ReadonlySet<Doubt> = new Set(["estimated", "not measured", "borrowed"]);
/** Words before a word among which a negation is of it. */
const REACH = 4;

/**
 * What a remark says that does not go with a pass, and the words that say so; undefined where it says
 * nothing of the kind, says that it is not so, or that it was seen to since.
 *
 * @example doubtIn("Überschlag bei 18 kV") // { doubt: "discharge", words: "uberschlag" }
 * @example doubtIn("no flashover") // undefined
 */
export const doubtIn = (remark: string): Doubted | undefined => doubtsIn(remark)[0];

function doubtsIn(remark: string): Doubted[] {
  const text = plain(remark);
  const settled = new RegExp(SETTLED).test(text);
  return [...WORDS].flatMap(([doubt, words]) =>
    settled && !LASTING.has(doubt)
      ? []
      : [...text.matchAll(words)].flatMap((match) =>
          doubt !== "not measured" && isNegated(text, match.index, match[0])
            ? []
            : [{ doubt, words: match[0] }],
        ),
  );
}

const isNegated = (text: string, at: number, word: string): boolean => {
  const clause =
    text
      .slice(0, at)
      .split(/[.;:!?\n]/)
      .at(-1) ?? "";
  const before = clause.trim().split(" ").slice(-REACH).join(" ");
  const after = text.slice(at + word.length);
  return (
    has(before) ||
    NOT_SEEN.test(after) ||
    (/^ ?[:=–-] ?/.test(after) && has(after.split(/[.;,]/)[0]?.slice(0, 12) ?? ""))
  );
};

/** Right after a word, these say that it was looked for and is not there: `corona not seen`. */
const NOT_SEEN =
  /^(?: (?:was|were|is|are|wurde|wurden|ist|a ete|fue|foi))? (?:not|nicht|pas|no|nao|non) (?:seen|observed|noted|heard|found|detected|visible|present|festgestellt|beobachtet|gehort|sichtbar|observe|constate|detecte|vist|visto|observad|detectad|notad)/;

const has = (text: string): boolean => new RegExp(NEGATION).test(text);

/**
 * Whether a remark takes back the pass of its row. A borrowed instrument alone does not: it may be a sound
 * one, and the check asks.
 */
export const takesBack = (remark: string): boolean =>
  doubtsIn(remark).some(({ doubt }) => doubt !== "borrowed");

/** Whether a remark says that what it speaks of was seen to since. */
export const isSettled = (remark: string): boolean => new RegExp(SETTLED).test(plain(remark));
