import { expect, test } from "vitest";
import { localeOf, shownCell } from "../../src/pane/locale";

// Unicode CLDR, as Intl carries it: the marks of numbers in these languages.
test.each([
  ["en-GB", "ltr", ".", "1,250.5"],
  ["de-DE", "ltr", ",", "1.250,5"],
  ["ar", "rtl", ".", "1,250.5"],
  ["en-US@posix", "ltr", ".", "1,250.5"],
] as const)("%s: runs %s, decimal %s", (tag, direction, decimal, written) => {
  const locale = localeOf(tag);
  expect([locale.direction, locale.decimal, locale.number(1250.5)]).toEqual([
    direction,
    decimal,
    written,
  ]);
});

test("a bound keeps its mark, a blank is a dash, a day is a day", () => {
  const locale = localeOf("en-GB");
  expect(shownCell(locale, "> 20000", { unit: "MΩ" })).toBe("> 20,000 MΩ");
  expect(shownCell(locale, null, { unit: "MΩ" })).toBe("–");
  expect(shownCell(locale, "not read", { unit: "MΩ" })).toBe("not read");
  expect(shownCell(locale, 46_350, { date: true })).toBe("24 Nov 2026");
});
