/** Texts up to which answers are kept; a workbook says the same words again and again. */
const MAX_KEPT = 20_000;

/**
 * A function of a text that keeps its answers.
 *
 * @param of what is worked out, by the text alone
 */
export const remembered = <T>(of: (text: string) => T): ((text: string) => T) => {
  const kept = new Map<string, T>();
  return (text) => {
    const known = kept.get(text);
    if (known !== undefined || kept.has(text)) return known as T;
    const found = of(text);
    if (kept.size > MAX_KEPT) kept.clear();
    kept.set(text, found);
    return found;
  };
};
