/** A language that nobody speaks: the texts of a language, each within brackets by which it is known. */
export const bracketed = <Texts>(texts: Texts): Texts => within(texts) as Texts;

const within = (part: unknown): unknown => {
  if (typeof part === "string") return part === "" ? part : `⟦${part}⟧`;
  if (typeof part === "function") return (...given: unknown[]) => within(part(...given));
  if (Array.isArray(part)) return part.map(within);
  if (typeof part !== "object" || part === null) return part;
  return Object.fromEntries(Object.entries(part).map(([name, inner]) => [name, within(inner)]));
};

/** What stands outside of all brackets. */
export const outside = (shown: string): string => {
  let [left, depth] = ["", 0];
  for (const sign of shown) {
    if (sign === "⟦") depth += 1;
    else if (sign === "⟧") depth -= 1;
    else if (depth === 0) left += sign;
  }
  return left;
};

/** Whether a text is of the messages as a whole. */
export const isOfMessages = (shown: string): boolean => shown !== "" && outside(shown) === "";
