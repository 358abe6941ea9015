/**
 * Before or after the withstand test, as the stage column has it.
 *
 * @returns undefined where the text says neither, or both
 * @example readStage("post-withstand") // "after"
 */
export const readStage = (text: string): "before" | "after" | undefined => {
  const before = /\b(?:before|pre|prior)\b/i.test(text);
  const after = /\b(?:after|post)\b/i.test(text);
  return before === after ? undefined : before ? "before" : "after";
};
