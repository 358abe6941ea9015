import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { runs } from "../../quantities/runs";

/**
 * What was said of lines, each reason once with the lines that it is of.
 *
 * @example byReason([{ line: 3, reason: () => "no unit." }, { line: 4, reason: () => "no unit." }], told) // ["lines 3 and 4: no unit."]
 */
export const byReason = (
  said: readonly { readonly line: number; readonly reason: Said<Told> }[],
  told: Told,
): string[] => {
  const lines = new Map<string, number[]>();
  for (const { line, reason: say } of said) {
    const reason = say(told);
    const sofar = lines.get(reason);
    if (sofar) sofar.push(line);
    else lines.set(reason, [line]);
  }
  return [...lines].map(([reason, of]) => {
    const numbers = [...new Set(of)].sort((one, other) => one - other);
    return told.intake.lines.with(numbers.length, runs(numbers, told), reason);
  });
};
