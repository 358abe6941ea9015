/** What was written, in quotation marks, for use in a sentence: control characters shown as ·, long text cut. */
export const quoted = (text: string, longest = 40): string => {
  const plain = text.slice(0, longest).replace(/[\p{C}\s]/gu, (mark) => (mark === " " ? " " : "·"));
  return `"${plain}${text.length > longest ? "…" : ""}"`;
};
