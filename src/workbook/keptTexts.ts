/** So many texts are known at once; a workbook has few that are written again and again. */
const MOST = 100_000;

/**
 * Keeps the texts of a workbook: equal ones as one, and each apart from the part of the file that it was
 * read from, which would stay in memory with it.
 */
export const keptTexts = (): ((text: string) => string) => {
  const known = new Map<string, string>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined) return before;
    // A text put together and taken apart again is a copy, no window on the longer one.
    const own = ` ${text}`.slice(1);
    if (known.size < MOST) known.set(own, own);
    return own;
  };
};
