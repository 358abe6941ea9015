import type { Rule } from "../context";

/** A weight that the project sets for a rule that there is not. */
export const unknownRuleWeight = (known: () => ReadonlySet<string>): Rule => ({
  id: "unknown-rule-weight",
  title: "A weight for an unknown rule",
  finds: "a weight in the project's settings for a rule that the check does not have",
  why: "The project means to weigh something, and it weighs as before.",
  satisfies: "the rule's name as the reference writes it",
  quiet: "for every rule of the reference",
  reads: "book",
  of: [],
  find: ({ lineup }) =>
    Object.keys(lineup.ruleWeights ?? {})
      .filter((id) => !known().has(id))
      .map((id) => ({
        rule: "unknown-rule-weight",
        weight: "query",
        sheet: "Settings",
        address: "A1",
        message: `The project sets a weight for the rule "${id}", which the check does not have; use the rule's name from the reference.`,
        found: id,
      })),
});
