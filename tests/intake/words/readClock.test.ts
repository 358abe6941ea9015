import fc from "fast-check";
import { expect, test } from "vitest";
import { readClock, readTime } from "../../../src/intake/words/readDate";

const two = (number: number) => String(number).padStart(2, "0");

test("a time of day inside a line is what the same text is by itself", () => {
  const time = fc.tuple(fc.nat(30), fc.nat(70), fc.nat(70));
  fc.assert(
    fc.property(time, fc.string({ maxLength: 12 }), ([hour, minute, second], before) => {
      const text = [hour, minute, second].map(two).join(":");
      const found = readClock(`${before}${text};31`, before.length, before.length + text.length);
      expect(found).toBe(readTime(text));
    }),
  );
});

test.each(["6:00 PM", "09:14", "9:14:30", "09.14.30", "09:1x:30", "0x:14:30", "", "2026-11-03"])(
  "%s is left to the reader of all writings",
  (text) => expect(readClock(text, 0, text.length)).toBeUndefined(),
);
