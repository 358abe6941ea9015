import type { Context } from "./context";
import type { Finding } from "./finding";

/** Findings as the project weighs them: its settings may change a rule's weight, never take the rule away. */
export const settle = (findings: readonly Finding[], { lineup }: Context): readonly Finding[] => {
  const weights = lineup.ruleWeights;
  return weights
    ? findings.map((finding) => {
        const weight = weights[finding.rule];
        return weight ? { ...finding, weight } : finding;
      })
    : findings;
};
