import { plainWords } from "../../intake/words/plainWords";
import { ar } from "./ar";
import { de } from "./de";
import { en } from "./en";
import { es } from "./es";
import { fr } from "./fr";
import { it } from "./it";
import { pt } from "./pt";
import { remembered } from "./remembered";
import { CONCEPTS, type Concept, type Phrases, type SheetWords } from "./words";

const LANGUAGES: readonly SheetWords[] = [en, de, fr, es, pt, it, ar];

/** Marks over Latin letters and hamzas are left out on both sides: people leave them out too. */
const withoutMarks = (text: string) =>
  text.normalize("NFD").replace(/\p{M}/gu, "").normalize("NFC");

/** Lower case without accents and punctuation: what all words of the survey are compared in. */
export const plain = remembered((text) => withoutMarks(plainWords(text)));

const pattern = (phrases: Phrases) =>
  phrases.map((phrase) => withoutMarks(phrase)).join("|") || "(?!)";
const whole = (phrases: Phrases) => new RegExp(`^(?:${pattern(phrases)})$`, "u");
const within = (phrases: Phrases) =>
  new RegExp(`(?<![\\p{L}\\p{N}])(?:${pattern(phrases)})(?![\\p{L}\\p{N}])`, "u");
const all = (pick: (words: SheetWords) => Phrases | undefined): Phrases =>
  LANGUAGES.flatMap((words) => pick(words) ?? []);

const TITLES: readonly (readonly [Concept, RegExp])[] = CONCEPTS.map((concept) => [
  concept,
  whole(all(({ titles }) => titles[concept])),
]);

/**
 * What a title or a label is about, by its words alone.
 *
 * @example conceptOf("Least (GΩ)") // "minimum"
 */
export const conceptOf = remembered((text): Concept | undefined => {
  // "1 min" is a time, and no minimum.
  const words = plain(text.slice(0, 120)).replace(/(\d) ?min(?![a-z])/g, "$1 minute");
  return words === "" ? undefined : TITLES.find(([, form]) => form.test(words))?.[0];
});

const KIND_IDS = [...new Set(LANGUAGES.flatMap(({ kinds }) => Object.keys(kinds)))];
const KIND_FORMS: readonly (readonly [string, RegExp])[] = KIND_IDS.map((kind) => [
  kind,
  within(all(({ kinds }) => kinds[kind])),
]);

/** The record kinds that a text speaks of. */
export const kindsIn = remembered((text): readonly string[] => {
  const words = plain(text.slice(0, 300));
  return KIND_FORMS.flatMap(([kind, form]) => (form.test(words) ? [kind] : []));
});

const FORMS = {
  pass: whole(all(({ pass }) => pass)),
  fail: whole(all(({ fail }) => fail)),
  yes: whole(all(({ yes }) => yes)),
  no: whole(all(({ no }) => no)),
  notApplicable: whole(all(({ notApplicable }) => notApplicable)),
  notDone: whole(all(({ notDone }) => notDone)),
  summary: whole(all(({ summaries }) => summaries)),
} as const;
const INSIDE = {
  before: within(all(({ before }) => before)),
  after: within(all(({ after }) => after)),
  closing: within(all(({ closing }) => closing).filter((word) => word.length > 1)),
  opening: within(all(({ opening }) => opening).filter((word) => word.length > 1)),
  limit: within(all(({ limit }) => limit)),
  atLeast: within(all(({ atLeast }) => atLeast)),
  atMost: within(all(({ atMost }) => atMost)),
  rated: within(all(({ rated }) => rated)),
  summary: within(all(({ summaries }) => summaries)),
} as const;

const ARABIC = /[\p{Script=Arabic}\s]+/gu;
const LATIN = /[^\p{Script=Arabic}]+/gu;

/** What a text says in each of two scripts: "Non لا" says no twice; undefined where it is written in one. */
const inBothScripts = (words: string): readonly string[] | undefined => {
  if (!/\p{Script=Arabic}/u.test(words)) return undefined;
  const halves = [words.replace(ARABIC, " ").trim(), words.replace(LATIN, " ").trim()];
  return halves.includes("") ? undefined : halves;
};

/** What a text says in each of two languages: "Non / No" says no twice; undefined where it is said once. */
const inBothLanguages = (text: string): readonly string[] | undefined => {
  const halves = text.split("/").map(plain);
  return halves.length !== 2 || halves.includes("") ? undefined : halves;
};

/** Whether a cell's text is one of the words, and nothing more; in two scripts or languages, whether both halves are. */
export const isWord = (text: string, form: keyof typeof FORMS): boolean => {
  const words = plain(text);
  return (
    FORMS[form].test(words) ||
    ((inBothScripts(words) ?? inBothLanguages(text))?.every((half) => FORMS[form].test(half)) ??
      false)
  );
};

/** Whether a text has one of the words in it. */
export const hasWord = (text: string, form: keyof typeof INSIDE): boolean =>
  INSIDE[form].test(plain(text));

const TICKS = /^[✓✔☑√]$/u;
const CROSSES = /^[✗✘☒×]$/u;

/** A verdict in somebody's own words; undefined for what is none. */
export const verdictIn = remembered((text): "Pass" | "Fail" | undefined => {
  // "Not OK - truck racked with the breaker closed"
  const mark = (text.split(/\s[-–]\s|[,;:(]/)[0] ?? "").trim();
  if (TICKS.test(mark)) return "Pass";
  if (CROSSES.test(mark) || isWord(mark, "fail")) return "Fail";
  return isWord(mark, "pass") ? "Pass" : undefined;
});

/** Number words that stand before a unit in running text: "five gigs", "one minute". */
export const NUMBER_WORDS: Readonly<Record<string, number>> = {
  one: 1,
  two: 2,
  three: 3,
  four: 4,
  five: 5,
  ten: 10,
  eine: 1,
  un: 1,
  une: 1,
  uno: 1,
  um: 1,
};
