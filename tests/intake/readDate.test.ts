import { expect, test } from "vitest";
import { dateOrder, readDate, readTime } from "../../src/intake/readDate";

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
])("%s", (text) => {
  expect(readDate(text)).toEqual({ ok: true, value: NOVEMBER_3 });
});

test("a slash leaves the order open until another date of the column shows it", () => {
  expect(readDate("03/11/2026")).toMatchObject({
    reason: '"03/11/2026" could have the day or the month first; write it as 2026-11-25.',
  });
  expect(readDate("03/11/2026", dateOrder(["03/11/2026", "25/11/2026"]))).toMatchObject({
    value: NOVEMBER_3,
  });
  expect(readDate("11/03/2026", dateOrder(["11/25/2026"]))).toMatchObject({ value: NOVEMBER_3 });
  expect(dateOrder(["25/11/2026", "11/25/2026"])).toBeUndefined();
  expect(readDate("25/11/2026")).toMatchObject({ ok: true });
});

test.each(["2026-02-30", "2026-13-01", "yesterday", "", "12345", "32.01.2026", "3 Foo 2026"])(
  "%j is no date",
  (text) => {
    expect(readDate(text)).toMatchObject({ ok: false });
  },
);

test("time of day", () => {
  expect(readTime("09:30")).toBeCloseTo(0.3958333, 6);
  expect(readTime("2026-11-03 12:00:00")).toBe(0.5);
  expect(readTime("2026-11-03")).toBeUndefined();
});
