/** So many texts are remembered, every second of a day among them, and none that is longer. */
const MAX_TEXTS = 100_000;
const LONGEST = 100;

/**
 * A reader of short texts that reads the same text once.
 *
 * @example memoizeText(readStage)("before") // as readStage("before"), and the second time from memory
 */
export const memoizeText = <T>(read: (text: string) => T): ((text: string) => T) => {
  const known = new Map<string, T>();
  return (text) => {
    const before = known.get(text);
    if (before !== undefined || known.has(text)) return before as T;
    const value = read(text);
    if (known.size < MAX_TEXTS && text.length <= LONGEST) known.set(text, value);
    return value;
  };
};
