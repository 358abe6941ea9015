import { expect, test } from "vitest";
import { namesPosition, positionReader } from "../../../src/intake/words/readPosition";
import { english } from "../../support/inWords";

const read = (text: string, beside: readonly string[] = []) => {
  const result = positionReader([text, ...beside])(text);
  return result.ok ? result.value : result.say(english);
};

// How phases are lettered and paired on site: practice.
test.each<[string, readonly string[], string]>([
  ["L1", [], "L1"],
  ["l2", [], "L2"],
  ["Pole 3", [], "L3"],
  ["phase R", [], "L1"],
  ["Y", [], "L2"],
  ["B", ["R"], "L3"],
  ["B", ["A"], "L2"],
  ["C", [], "L3"],
  ["W", [], "L3"],
  ["L1-E", [], "L1-E"],
  ["L1–PE", [], "L1-E"],
  ["E-L2", [], "L2-E"],
  ["L3/G", [], "L3-E"],
  ["R to earth", [], "L1-E"],
  ["A to ground", [], "L1-E"],
  ["Y-E", [], "L2-E"],
  ["R–Y", [], "L1-L2"],
  ["RY", [], "L1-L2"],
  ["B-R", [], "L3-L1"],
  ["L12", [], "L1-L2"],
  ["L1-L3", [], "L3-L1"],
  ["L3L2", [], "L2-L3"],
  ["L1 open", [], "L1 open"],
  ["across L1", [], "L1 open"],
  ["across open pole 2", [], "L2 open"],
  ["L1-L1'", [], "L1 open"],
  ["Ｌ１－Ｅ", [], "L1-E"],
  ["Ph1-Terre", [], "L1-E"],
  ["Ph3-Ph1", [], "L3-L1"],
  ["Ph. 1", [], "L1"],
  ["Phase 2 à la masse", [], "L2-E"],
  ["Fase 1-Tierra", [], "L1-E"],
  ["Fase 2 - Terra", [], "L2-E"],
  ["Phase A to ground", [], "L1-E"],
  ["Leiter1 gegen Erde", [], "L1-E"],
  ["الطور 3 - الأرض", [], "L3-E"],
  ["بين الطور 1 والطور 2", [], "L1-L2"],
])("%s beside %j is %s", (text, beside, expected) => {
  expect(read(text, beside)).toBe(expected);
});

test.each<[string, readonly string[], RegExp]>([
  [
    "B",
    [],
    /"B" could be L3 or L2, since the file does not show which letters it uses; use L1, L2, L3/,
  ],
  ["R", ["A"], /mixes phase letters of more than one kind/],
  ["N-E", [], /"N-E" is not a phase, pole or combination; use, for example, "L1-E"/],
  ["L4", [], /is not a phase/],
  ["E", [], /is not a phase/],
  ["L1-L2-L3", [], /is not a phase/],
  ["L1-E open", [], /is not a phase/],
  ["=cmd|'/C calc'!A0", [], /is not a phase/],
  ["L1".repeat(100000), [], /is not a phase/],
])("%s is refused", (text, beside, reason) => {
  expect(read(text, beside)).toMatch(reason);
});

test.each([
  ["R-Y", true],
  ["RY", true],
  ["BC", true],
  ["C-B", true],
  ["L1-E", true],
  ["CB", false],
  ["BB", false],
  ["CT", false],
  ["VT", false],
])("a title %s names a phase or combination: %s", (title, is) => {
  expect(namesPosition(title)).toBe(is);
});
