import { DOUBT_WORDS } from "./doubtWords";
import { DOUBTS, type Doubt, type DoubtWords, type Words } from "./language";
import { anyOf, plain } from "./words";

/** What a remark says, and the words that say so. */
interface Doubted {
  readonly doubt: Doubt;
  readonly words: string;
}

/** Finds every place, not the first alone. */
const each = ({ source }: RegExp): RegExp => new RegExp(source, "gu");
/** Any word of one sort, in whatever language. */
const any = (sort: (words: DoubtWords) => Words): RegExp => anyOf(DOUBT_WORDS.flatMap(sort));

const WORDS: ReadonlyMap<Doubt, RegExp> = new Map(
  DOUBTS.map((doubt) => [doubt, each(any(({ doubts }) => doubts[doubt]))]),
);
const NEGATION = any(({ negations }) => negations);
const CONTRAST = any(({ contrasts }) => contrasts);
const SETTLED = each(any(({ settled }) => settled));
const AHEAD = any(({ ahead }) => ahead);

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
  const settledAt = settledIn(text);
  return [...WORDS].flatMap(([doubt, words]) =>
    [...text.matchAll(words)].flatMap((match) =>
      settledAt.some((at) => settles(text, at, doubt, match.index)) ||
      (doubt !== "not measured" && isNegated(text, match.index, match[0]))
        ? []
        : [{ doubt, words: match[0] }],
    ),
  );
}

const CLAUSE_END = /[,.;:!?\n]/;

/** Where a text says that something was seen to: neither denied nor still to come. */
const settledIn = (text: string): number[] =>
  [...text.matchAll(SETTLED)].flatMap(({ index, 0: words }) => {
    const before = text.slice(0, index).split(CLAUSE_END).at(-1) ?? "";
    const [after = ""] = text.slice(index + words.length).split(CLAUSE_END);
    const isToCome = AHEAD.test(`${before}${words}${after}`);
    return isToCome || isDenied(before) ? [] : [index];
  });

/** Whether a doubt was seen to: it stands before what says so, or, where nothing is to be done again, in the same sentence. */
const settles = (text: string, settledAt: number, doubt: Doubt, at: number): boolean =>
  !LASTING.has(doubt) &&
  (at <= settledAt || (doubt !== "repeat" && !/[.;!?\n]/.test(text.slice(settledAt, at))));

const isNegated = (text: string, at: number, word: string): boolean => {
  const clause =
    text
      .slice(0, at)
      .split(/[.;:!?\n]/)
      .at(-1) ?? "";
  const after = text.slice(at + word.length);
  return (
    isDenied(clause.split(CONTRAST).at(-1) ?? "") ||
    NOT_SEEN.test(after) ||
    (/^ ?[:=–-] ?/.test(after) && NEGATION.test(after.split(/[.;,]/)[0]?.slice(0, 12) ?? ""))
  );
};

/** Whether one of the last words before a word denies it. */
const isDenied = (before: string): boolean =>
  NEGATION.test(before.trim().split(" ").slice(-REACH).join(" "));

/** Right after a word, these say that it was looked for and is not there: `corona not seen`. */
const NOT_SEEN =
  /^(?: (?:was|were|is|are|wurde|wurden|ist|a ete|fue|foi))? (?:not|nicht|pas|no|nao|non) (?:seen|observed|noted|heard|found|detected|visible|present|festgestellt|beobachtet|gehort|sichtbar|observe|constate|detecte|vist|visto|observad|detectad|notad)/;

/**
 * Whether a remark takes back the pass of its row. A borrowed instrument alone does not: it may be a sound
 * one, and the check asks.
 */
export const takesBack = (remark: string): boolean =>
  doubtsIn(remark).some(({ doubt }) => doubt !== "borrowed");

/** Whether a remark says that what it speaks of was seen to since. */
export const isSettled = (remark: string): boolean => settledIn(plain(remark)).length > 0;
