import { noKind, type Rule } from "../context";

/** A weight that the project sets for a rule that there is not. */
export const unknownRuleWeight = (known: () => ReadonlySet<string>): Rule => ({
  id: "unknown-rule-weight",
  reads: "book",
  of: noKind,
  find: ({ lineup, text }) =>
    Object.keys(lineup.ruleWeights ?? {})
      .filter((id) => !known().has(id))
      .map((id) => ({
        rule: "unknown-rule-weight",
        weight: "query",
        sheet: "Settings",
        address: "A1",
        message: text.rules["unknown-rule-weight"].message(id),
        found: id,
      })),
});
