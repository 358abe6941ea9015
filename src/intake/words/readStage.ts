/** Before and after, in the languages that titles come in. `\b` knows no accented letters. */
const BEFORE = /(?<!\p{L})(?:before|pre|prior|vor|avant|antes)(?!\p{L})/iu;
const AFTER = /(?<!\p{L})(?:after|post|nach|après|después)(?!\p{L})/iu;

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
