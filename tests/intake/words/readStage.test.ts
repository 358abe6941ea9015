import { expect, test } from "vitest";
import { readStage } from "../../../src/intake/words/readStage";

test.each([
  ["before", "before"],
  ["Before withstand", "before"],
  ["pre-test", "before"],
  ["post-withstand", "after"],
  ["AFTER", "after"],
  ["before and after", undefined],
  ["afternoon", undefined],
  ["", undefined],
])("%s", (text, stage) => {
  expect(readStage(text)).toBe(stage);
});
