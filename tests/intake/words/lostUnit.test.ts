import { expect, test } from "vitest";
import { lostInTitle, lostUnit } from "../../../src/intake/words/lostUnit";
import { english } from "../../support/inWords";

test.each([
  ["R 1 min (G?)", { name: "R 1 min", unit: "G?" }],
  ["R [??]", { name: "R", unit: "??" }],
  ["T (?C)", { name: "T", unit: "?C" }],
  ["R (GΩ)", undefined],
  ["Released (yes or no?)", undefined],
  ["Passed?", undefined],
])("%s", (title, lost) => {
  expect(lostInTitle(title)).toEqual(lost);
});

test.each([
  ["52.5", "R (G?)", /^the unit "G\?" in the title "R \(G\?\)" has lost a sign/],
  ["> 10 T?", "R (G?)", /^the unit "T\?" has lost a sign/],
  ["52.5 GΩ", "R (G?)", /^undefined$/],
  ["52.5", "R", /^undefined$/],
])("%s under %s", (text, title, reason) => {
  expect(String(lostUnit(text, title, "MΩ")?.(english))).toMatch(reason);
});
