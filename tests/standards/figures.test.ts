import { expect, it } from "vitest";
import { contactTestCurrent } from "../../src/standards/contactTestCurrent";
import { sourceText } from "../../src/standards/criterion";
import { earthContinuity } from "../../src/standards/iec62271-200.2021";
import { contactSpread, dewLimit } from "../../src/standards/practice";
import { withstandTolerance } from "../../src/standards/withstandTolerance";

it.each([
  // A breaker maker's bulletin (read).
  ["spread of contact resistance", contactSpread, 0.5, "read"],
  // practice
  ["margin above the dew point, K", dewLimit, 3, "practice"],
  // IEC 62271-200 (memory; verdicts are signed on it).
  ["earthing test current, A", earthContinuity.current, 30, "signed"],
  ["earthing drop, V", earthContinuity.drop, 3, "signed"],
  // IEC 60694, clause 6.4.1, and ANSI C37.09, both read in quotation.
  ["contact test current, IEC, A", contactTestCurrent("IEC"), 50, "read"],
  ["contact test current, NETA, A", contactTestCurrent("NETA"), 100, "read"],
  // IEC 60060-1 (memory; verdicts are signed on it).
  ["voltage tolerance, 60 s", withstandTolerance(60), 0.01, "signed"],
  ["voltage tolerance, 15 min", withstandTolerance(900), 0.03, "signed"],
] as const)("%s", (_, criterion, value, certainty) => {
  expect(criterion.value).toBe(value);
  expect(criterion.source.certainty).toBe(certainty);
});

it("writes a source in one line, with its certainty", () => {
  expect(
    sourceText({ document: "IEC 62271-1", edition: "2017", place: "table 1", certainty: "memory" }),
  ).toBe("IEC 62271-1:2017, table 1 (memory)");
  expect(sourceText(dewLimit.source)).toBe("Common practice, surface above dew point (practice)");
});
