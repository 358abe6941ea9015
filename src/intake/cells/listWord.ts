import type { Accepts } from "../../records/kind";
import { anyWord, wordsFor } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import { sensesOf } from "../words/senses";

type List = Extract<Accepts, { type: "list" }>;

const whole = (pattern: string) => new RegExp(`^${pattern}$`, "iu");
const PASS = whole(anyWord(({ pass }) => pass));
const FAIL = whole(anyWord(({ fail }) => fail));
const AS_MARKED = whole(anyWord(({ asMarked }) => asMarked));
const REVERSED = whole(anyWord(({ reversed }) => reversed));
const NOT_APPLICABLE = whole(anyWord(({ notApplicable }) => notApplicable));
const NONE = new RegExp(`^${anyWord(({ none }) => none)}(?!\\p{L})`, "iu");
const YES: ReadonlySet<string> = new Set(wordsFor(({ yes }) => yes).map(plainWords));
const NO: ReadonlySet<string> = new Set(wordsFor(({ no }) => no).map(plainWords));

type Answer = "pass" | "fail" | "yes" | "no" | "none" | "tick" | "marked" | "reversed";

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
      ["marked", AS_MARKED],
      ["reversed", REVERSED],
      ["fail", FAIL],
      ["pass", PASS],
    ] as const
  ).find(([, pattern]) => pattern.test(words));
  return found?.[0];
};

/** Whether a text is an answer and nothing else: `OK`, `n/a`, `✓`. */
export const isAnswer = (text: string): boolean =>
  text.length < LONGEST && answerOf(text) !== undefined;

/** Whether a column is ticked by nothing but crosses, as a form without a tick on its keyboard is: `x`, `X`. */
export const areTicks = (texts: readonly string[]): boolean =>
  texts.length > 0 && texts.every(isCross);

/** A cross in a column of nothing else as the tick that it is. */
export const ticked = (text: string): string => (isCross(text) ? "✓" : text);
const isCross = (text: string): boolean => /^\s*x\s*$/i.test(text);

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
  const parts = partsOf(list);
  const meant = answerOf(text) ?? dischargeIn(text, list);
  if (meant !== undefined) return MEANT[meant](parts);
  const said = text.split(/[,;–/]|\s-\s/).map((one) => one.trim());
  return said.length === 1 || text.length > LONGEST ? undefined : alike(said, list);
};

const LONGEST = 80;

/** What several answers in one text come to, where all come to the same: `held, no breakdown`, `Non / No`. */
const alike = (said: readonly string[], list: List): string | undefined => {
  const found = new Set(said.map((one) => (one === "" ? undefined : listWord(one, list))));
  return found.size === 1 ? [...found][0] : undefined;
};

/** A discharge, or that there was none, in words, where that is what a list asks: `no flashover`, `sans claquage`. */
const dischargeIn = (text: string, { values, right }: List): Answer | undefined => {
  if (right !== "No" || !values.includes("Yes") || text.length > LONGEST) return undefined;
  const words = plainWords(text);
  const bare = words.replace(NONE, "").trim();
  const { senses, unknown } = sensesOf(bare);
  if (unknown > 0 || senses.size !== 1 || !senses.has("discharge")) return undefined;
  return bare === words ? "yes" : "no";
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
  const isWanted = /^(?:OK$|As |To |Seen )/.test(right ?? "");
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
  marked: ({ right }) => (right === "As marked" ? right : undefined),
  reversed: ({ otherwise }) => otherwise,
  fail: ({ no, right, otherwise }) => (right === "Yes" ? no : otherwise),
};
