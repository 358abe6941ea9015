import { expect, test } from "vitest";
import { dateOrder, readDate, readTime } from "../../../src/intake/words/readDate";
import { inWords } from "../../support/inWords";

// Day 46329 is 2026-11-03: 25569 is 1970-01-01 in the 1900 date system (memory).
const NOVEMBER_3 = 25569 + Date.UTC(2026, 10, 3) / 86_400_000;

test.each([
  "2026-11-03",
  "2026-11-03T09:14",
  "2026/11/3",
  "03.11.2026",
  "3.11.2026 09:14",
  "3 Nov 2026",
  "03-NOV-2026",
  "3 November 2026",
  "3-Nov-26",
  "03.11.26",
  "3. November 2026",
  "Nov 3, 2026",
  "November 3rd, 2026",
  "03 nov. 2026 14:05",
  "3 noviembre 2026",
  "46329",
  "46329.385",
])("%s", (text) => {
  expect(readDate(text)).toEqual({ ok: true, value: NOVEMBER_3 });
});

test("a slash leaves the order open until another date of the column shows it", () => {
  expect(inWords(readDate("03/11/2026"))).toMatchObject({
    say: '"03/11/2026" could have the day or the month first; write it as 2026-11-25.',
  });
  expect(readDate("03/11/2026", dateOrder(["03/11/2026", "25/11/2026"]).value)).toMatchObject({
    value: NOVEMBER_3,
  });
  expect(readDate("11/03/2026", dateOrder(["11/25/2026"]).value)).toMatchObject({
    value: NOVEMBER_3,
  });
  expect(inWords(dateOrder(["25/11/2026", "11/25/2026"]))).toMatchObject({
    value: undefined,
    confidence: "open",
  });
  expect(inWords(dateOrder(["03/11/2026"]))).toEqual({
    value: undefined,
    evidence:
      'order of day and month unknown, because "03/11/2026" on line 1 could be read either way and nothing else settles it',
    confidence: "open",
  });
  expect(inWords(dateOrder(["03/11/2026", "25/11/26"])).evidence).toBe(
    'day first, because "25/11/26" on line 2 can be read no other way',
  );
  expect(readDate("25/11/2026")).toMatchObject({ ok: true });
});

test.each([
  "2026-02-30",
  "2026-13-01",
  "yesterday",
  "",
  "12345",
  "32.01.2026",
  "3 Foo 2026",
  "99999",
])("%j is no date", (text) => {
  expect(readDate(text)).toMatchObject({ ok: false });
});

test("two digits of a year between dashes could be the day", () => {
  expect(inWords(readDate("26-11-03"))).toMatchObject({
    say: '"26-11-03" could have the year first; write it as 2026-11-25.',
  });
  expect(readDate("26-11-03", "day-first")).toMatchObject({ ok: true });
});

test("what a date shows by itself counts before what was said of the file", () => {
  expect(readDate("25/11/2026", "month-first")).toMatchObject({ ok: true, value: NOVEMBER_3 + 22 });
  expect(readDate("03/11/26", "day-first")).toMatchObject({ value: NOVEMBER_3 });
});

test.each([
  ["6:00 PM", 0.75],
  ["12:00 AM", 0],
  ["12:30 pm", 0.5 + 1 / 48],
  ["06:00:00 a.m.", 0.25],
  ["2026-11-03T18:00:00.250Z", 0.75],
  ["46329.75", 0.75],
  ["0,25", 0.25],
  ["25:00", undefined],
  ["13:00 PM", undefined],
  ["09:75", undefined],
])("time of day %j", (text, day) => {
  expect(readTime(text)).toBe(day);
});

test("time of day", () => {
  expect(readTime("09:30")).toBeCloseTo(0.3958333, 6);
  expect(readTime("2026-11-03 12:00:00")).toBe(0.5);
  expect(readTime("2026-11-03")).toBeUndefined();
});
