import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { judgeCase, type VerdictCase } from "./judgeCase";

const CASES = "tests/verdicts/cases";

// Verdicts signed by engineers of the trade; all names and readings are invented. Each case says what it rests on.
describe.each(readdirSync(CASES))("%s", (file) => {
  const cases: VerdictCase[] = JSON.parse(readFileSync(`${CASES}/${file}`, "utf8"));

  it.each(cases)("$id: $expect", (one) => {
    const { got } = judgeCase(one);
    expect([one.expect, ...one.acceptable], `${one.id}: ${one.why} (${one.source})`).toContain(got);
  });
});
