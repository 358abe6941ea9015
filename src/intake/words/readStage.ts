import { wholeWord } from "./phrases";

/** A time after the word: "after 60 s" says when a reading was taken, and no stage. */
const NO_TIME = "(?!\\s*\\d+(?:[.,]\\d+)?\\s*(?:s|sek|sec|min|[\"'′″])\\p{L}*(?!\\p{L}))";

const BEFORE = new RegExp(wholeWord(({ stages }) => stages.before) + NO_TIME, "iu");
const AFTER = new RegExp(wholeWord(({ stages }) => stages.after) + NO_TIME, "iu");

/** A word for either stage. */
export const STAGE = new RegExp(
  wholeWord(({ stages }) => [...stages.before, ...stages.after]) + NO_TIME,
  "iu",
);

/** What a stage is before or after. */
export const WITHSTAND = new RegExp(
  wholeWord(({ withstand }) => withstand),
  "giu",
);

/**
 * Before or after the withstand test, as the stage column has it.
 *
 * @returns undefined where the text says neither, or both
 * @example readStage("post-withstand") // "after"
 */
export const readStage = (text: string): "before" | "after" | undefined => {
  const before = BEFORE.test(text);
  const after = AFTER.test(text);
  return before === after ? undefined : before ? "before" : "after";
};
