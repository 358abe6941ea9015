import { runs } from "../quantities/runs";

/**
 * What was said of lines, each reason once with the lines that it is of.
 *
 * @example byReason([{ line: 3, reason: "no unit." }, { line: 4, reason: "no unit." }]) // ["lines 3 and 4: no unit."]
 */
export const byReason = (
  said: readonly { readonly line: number; readonly reason: string }[],
): string[] => {
  const lines = new Map<string, number[]>();
  for (const { line, reason } of said) {
    const sofar = lines.get(reason);
    if (sofar) sofar.push(line);
    else lines.set(reason, [line]);
  }
  return [...lines].map(([reason, of]) => {
    const numbers = [...new Set(of)].sort((one, other) => one - other);
    return `${numbers.length === 1 ? "line" : "lines"} ${runs(numbers)}: ${reason}`;
  });
};
