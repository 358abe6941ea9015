import { expect, test } from "vitest";
import { kindOfTest } from "../../../src/intake/words/kindOfTest";
import { KINDS } from "../../../src/records/kinds";

const SOME = KINDS.filter(({ id }) => ["contact", "insulation", "withstand"].includes(id));

test.each([
  ["Insulation resistance", "insulation"],
  ["Insulation after withstand", "insulation"],
  ["IR", "insulation"],
  ["Hi-pot", "withstand"],
  ["HV test", "withstand"],
  ["Power frequency withstand", "withstand"],
  ["Contact resistance, d.c.", "contact"],
  ["Joints", "contact"],
  ["Partial discharge", undefined],
  ["first", undefined],
])("%s", (text, kind) => {
  expect(kindOfTest(text, SOME)?.id).toBe(kind);
});
