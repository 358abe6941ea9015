import type { Context } from "../context";
import type { Finding } from "../findings/finding";
import type { Reach } from "../findings/gatherFindings";
import { withConcessions } from "./concessions";

/**
 * Findings with their concessions, as the project weighs them: its settings may change a rule's weight,
 * never take the rule away.
 */
export function applyConcessions(
  findings: readonly Finding[],
  context: Context,
  reachOf: (rule: string) => Reach | undefined,
): readonly Finding[] {
  const conceded = withConcessions(findings, context, reachOf);
  const weights = context.lineup.ruleWeights;
  return weights
    ? conceded.map((finding) => {
        const weight = weights[finding.rule];
        return weight ? { ...finding, weight } : finding;
      })
    : conceded;
}
