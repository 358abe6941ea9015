import { expect, test } from "vitest";
import { openBook } from "../../../src/intake/openBook";
import { takeBack } from "../../../src/intake/takeBack";
import { NO_ANSWERS, takeIn } from "../../../src/intake/takeIn";
import { readRememberedXml, rememberedXml } from "../../../src/memory/memory";
import { daySerial } from "../../../src/quantities/dates";
import type { Remembered } from "../../../src/sheets/remembered";
import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, ofRule, sound, TODAY } from "../support";

const EXPORT = {
  name: "crm.csv",
  content: "Panel,Part,Pole,R (µΩ),Date\n=K0001,Breaker Q0,L1,41.5,2026-11-20\n",
};

/** A sound workbook that an export was brought into, as its memory is read back from the file. */
const brought = (): { book: MemoryBook; remembered: Remembered } => {
  const book = sound();
  const intake = takeIn(openBook(book.snapshot), [EXPORT], { ...NO_ANSWERS, replace: true }, TODAY);
  if (!intake.ok) throw new Error(intake.reason);
  book.set(CONTACT, 0, "R µΩ", 41.5);
  book.set(CONTACT, 0, "Date", daySerial("2026-11-20"));
  const remembered = readRememberedXml(rememberedXml(intake.before.remembered));
  if (!remembered) throw new Error("nothing is remembered");
  return { book, remembered };
};

const told = ({ book, remembered }: ReturnType<typeof brought>) =>
  ofRule({ ...book.snapshot, ...remembered }, "changed-since-intake");

test("a reading that was changed by hand since is told with both values", () => {
  const one = brought();
  expect(told(one)).toEqual([]);
  one.book.set(CONTACT, 0, "R µΩ", 39.5);
  expect(told(one)).toMatchObject([
    { sheet: "Contacts", weight: "query", column: "R µΩ", found: "39.5", expected: "41.5" },
  ]);
});

test("who saved the workbook last is said, where its file tells", () => {
  const { book, remembered } = brought();
  book.set(CONTACT, 0, "R µΩ", 39.5);
  const savedBy = { name: "T. Aylward (invented)", day: "2026-11-22" };
  const [found] = ofRule({ ...book.snapshot, ...remembered, savedBy }, "changed-since-intake");
  expect(found?.message).toMatch(/last saved by T\. Aylward \(invented\) on 2026-11-22\.$/);
});

test("the same quantity written otherwise is no change, and a reading that is gone is missing, not changed", () => {
  const one = brought();
  one.book.set(CONTACT, 0, "R µΩ", "0.0415 mΩ");
  expect(told(one)).toEqual([]);
  one.book.set(CONTACT, 0, "R µΩ", null);
  expect(told(one)).toEqual([]);
});

test("an intake that was taken back says nothing of what is typed then", () => {
  const one = brought();
  const back = takeBack(openBook({ ...one.book.snapshot, ...one.remembered }));
  if (!back) throw new Error("nothing to take back");
  one.book.set(CONTACT, 0, "R µΩ", 39.5);
  expect(told({ ...one, remembered: back.remembered })).toEqual([]);
});

test("a change that the reading history has is explained", () => {
  const one = brought();
  one.book.set(CONTACT, 0, "R µΩ", 39.5);
  const again = takeIn(
    openBook({ ...one.book.snapshot, ...one.remembered }),
    [{ ...EXPORT, content: EXPORT.content.replace("41.5", "38") }],
    { ...NO_ANSWERS, replace: true },
    TODAY,
  );
  if (!again.ok) throw new Error(again.reason);
  one.book.set(CONTACT, 0, "R µΩ", 38);
  expect(told({ ...one, remembered: again.before.remembered })).toEqual([]);
});

test("an hour beside the same day is no change, another day is", () => {
  const one = brought();
  one.book.set(CONTACT, 0, "Date", daySerial("2026-11-20") + 0.4);
  expect(told(one)).toEqual([]);
  one.book.set(CONTACT, 0, "Date", daySerial("2026-11-21"));
  expect(told(one)).toMatchObject([{ column: "Date", weight: "query" }]);
});

test("a reading rounded to the digits that it is written with is a note; rounded away, a query", () => {
  const one = brought();
  one.book.set(CONTACT, 0, "R µΩ", 42);
  expect(told(one)).toMatchObject([{ weight: "note", found: "42" }]);
  one.book.set(CONTACT, 0, "R µΩ", 40);
  expect(told(one)).toMatchObject([{ weight: "query", found: "40" }]);
});
