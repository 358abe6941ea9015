import fc from "fast-check";
import { expect, test } from "vitest";
import { hasUnseen, mixesScripts, safeJson, shown, shownInLine } from "../../src/quantities/shown";

/** Control functions as ECMA-48 has them, marks of direction as Unicode Standard Annex 9 has them. */
test.each([
  ["clearing the screen", "K1\u001b[2J", "K1·[2J"],
  ["a title for the window", "\u001b]0;Pass\u0007K1", "·]0;Pass·K1"],
  ["an 8-bit control sequence", "\u009b31mFail", "·31mFail"],
  ["going back over what was said", "Fail\b\b\b\bPass\r", "Fail····Pass·"],
  ["writing turned round", "\u202e1K\u202c and \u20671K\u2069", "·1K· and ·1K·"],
  ["characters of no width, a tag, half a letter", "K\u200b1\ufeff\u{e0041}\ud800", "K·1···"],
  ["words that need joiners, other scripts, units", "می\u200cشود Ω µ 试验", "می\u200cشود Ω µ 试验"],
])("%s", (_what, text, seen) => {
  expect(shown(text)).toBe(seen);
  expect(hasUnseen(text)).toBe(text !== seen);
});

test("lines are kept, long ones cut; in one line they are not", () => {
  expect(shown("a\nb")).toBe("a\nb");
  expect(shownInLine("a\r\n\n b")).toBe("a b");
  expect(shown("x".repeat(1_000_000))).toMatch(/^x{4000}…$/);
});

test("JSON says the same with nothing in it that steers a terminal", () => {
  fc.assert(
    fc.property(fc.string({ unit: "binary" }), (text) => {
      const json = safeJson(JSON.stringify({ text, more: ["\u202e\u009b", text] }, null, 1));
      expect(JSON.parse(json).text).toBe(text);
      expect(json).not.toMatch(/[\0-\x09\x0b-\x1f\x7f-\x9f\u202a-\u202e\u2066-\u2069]/);
    }),
  );
});

test("a name of two alphabets that look alike is told from one of a unit or of another language", () => {
  expect(["AК1", "Зaгpузкa", "Ηall"].map(mixesScripts)).toEqual([true, true, true]);
  expect(
    ["K1", "К1", "Ячейка 1", "joint resistance µΩ", "kΩ", "Cell К1"].map(mixesScripts),
  ).toEqual([false, false, false, false, false, false]);
});
