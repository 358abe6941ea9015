import { expect, test } from "vitest";
import { CONTACT, ofRule, soundOf } from "../support";

test("a weight for a rule that there is not is asked about", () => {
  const book = soundOf(2, { ruleWeights: { "type-over": "note" } });
  expect(ofRule(book.snapshot, "unknown-rule-weight")).toMatchObject([
    {
      weight: "query",
      sheet: "Settings",
      address: "A1",
      message: expect.stringMatching(/"type-over", which the check does not have; use the rule/),
    },
  ]);
});

test("a weight for a rule that there is weighs its findings and is no finding", () => {
  const book = soundOf(2, { ruleWeights: { "typed-over": "note" } });
  book.set(CONTACT, 0, "Result", "Pass");
  expect(ofRule(book.snapshot, "unknown-rule-weight")).toEqual([]);
  expect(ofRule(book.snapshot, "typed-over").map(({ weight }) => weight)).toEqual(["note"]);
});
