import { expect, test } from "vitest";
import { daySerial, serialDay } from "../../src/quantities/dates";

/** Serial day 1 of the 1900 system is 1900-01-01, and 60 a day that never was (ECMA-376 part 1, 18.17.4.1; from memory): from 61 on, 1900-03-01, days agree. */
test("a serial number is its day, and one beyond the days of a spreadsheet stays a number", () => {
  expect(serialDay(61)).toBe("1900-03-01");
  expect(serialDay(46_350.75)).toBe("2026-11-24");
  expect(daySerial(serialDay(2_958_465))).toBe(2_958_465);
  expect(serialDay(1e9)).toBe("1000000000");
  expect(serialDay(-1e12)).toBe("-1000000000000");
});
