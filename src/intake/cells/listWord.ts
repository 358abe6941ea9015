import type { Accepts } from "../../records/kind";
import { anyWord, wordsFor } from "../words/phrases";
import { plainWords } from "../words/plainWords";

type List = Extract<Accepts, { type: "list" }>;

const whole = (pattern: string) => new RegExp(`^${pattern}$`, "iu");
const PASS = whole(anyWord(({ pass }) => pass));
const FAIL = whole(anyWord(({ fail }) => fail));
const REVERSED = whole(anyWord(({ reversed }) => reversed));
const NOT_APPLICABLE = whole(anyWord(({ notApplicable }) => notApplicable));
const YES: ReadonlySet<string> = new Set(wordsFor(({ yes }) => yes).map(plainWords));
const NO: ReadonlySet<string> = new Set(wordsFor(({ no }) => no).map(plainWords));

type Answer = "pass" | "fail" | "yes" | "no" | "none" | "tick" | "reversed";

/** What an answer comes to, in whatever words it is given. */
const answerOf = (text: string): Answer | undefined => {
  const mark = text.trim();
  if (/^(?:[✓✔☑√]|\[x\])$/i.test(mark)) return "tick";
  if (/^(?:[✗✘☒×])$/.test(mark)) return "fail";
  const words = plainWords(text);
  if (YES.has(words)) return "yes";
  if (NO.has(words)) return "no";
  const found = (
    [
      ["none", NOT_APPLICABLE],
      ["reversed", REVERSED],
      ["fail", FAIL],
      ["pass", PASS],
    ] as const
  ).find(([, pattern]) => pattern.test(words));
  return found?.[0];
};

/**
 * The word of a list that an answer in the trade's usual words, in any of the languages, comes to: a tick
 * or "OK" is the right one, "n/a" that by which a row does not apply. Undefined where it is none of them:
 * a tick under "Discharge" may mean either.
 *
 * @example listWord("correct", polarity) // "As marked"
 */
export const listWord = (text: string, list: List): string | undefined => {
  const plain = plainWords(text);
  const verbatim = list.values.find((value) => plainWords(value) === plain);
  if (verbatim !== undefined) return verbatim;
  const meant = answerOf(text);
  return meant === undefined ? undefined : MEANT[meant](partsOf(list));
};

/** What the words of a list say, each where it has one that does. */
interface ListParts {
  readonly yes?: string;
  readonly no?: string;
  /** Its word for nothing found. */
  readonly nothing?: string;
  readonly right?: string;
  readonly exempt?: string;
  /** The right word, where it says that something is as it should be, and the one that says it is not. */
  readonly asWanted?: string;
  readonly otherwise?: string;
}

const partsOf = ({ values, right, exempt }: List): ListParts => {
  const wrong = values.filter((value) => value !== right && value !== exempt);
  const isWanted = /^(?:OK$|As |To )/.test(right ?? "");
  return {
    yes: values.find((value) => value === "Yes"),
    no: values.find((value) => value === "No"),
    nothing: values.find((value) => value.startsWith("No ")),
    right,
    exempt,
    ...(isWanted && { asWanted: right, otherwise: wrong.length === 1 ? wrong[0] : undefined }),
  };
};

const MEANT: Readonly<Record<Answer, (parts: ListParts) => string | undefined>> = {
  none: ({ exempt }) => exempt,
  yes: ({ yes, asWanted }) => yes ?? asWanted,
  tick: ({ yes, right, asWanted }) => (right === "Yes" ? yes : asWanted),
  no: ({ no, nothing, otherwise }) => no ?? nothing ?? otherwise,
  pass: ({ right }) => right,
  reversed: ({ otherwise }) => otherwise,
  fail: ({ no, right, otherwise }) => (right === "Yes" ? no : otherwise),
};
