import { expect, test } from "vitest";
import { openBook } from "../../../src/intake/openBook";
import { takeBack } from "../../../src/intake/takeBack";
import { NO_ANSWERS, takeIn } from "../../../src/intake/takeIn";
import { readRememberedXml, rememberedXml } from "../../../src/memory/memory";
import { daySerial } from "../../../src/quantities/dates";
import type { Remembered } from "../../../src/sheets/kept/remembered";
import { english } from "../../support/inWords";
import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, ofRule, sound, TODAY } from "../support";

const EXPORT = {
  name: "crm.csv",
  content: "Panel,Part,Pole,R (µΩ),Date\n=K0001,Breaker Q0,L1,41.5,2026-11-20\n",
};
const SECOND = "=K0001,Breaker Q0,L2,41.7,2026-11-20\n";

/** A sound workbook that an export was brought into, as its memory is read back from the file. */
const brought = (withSecond = false): { book: MemoryBook; remembered: Remembered } => {
  const book = sound();
  const file = { ...EXPORT, content: EXPORT.content + (withSecond ? SECOND : "") };
  const intake = takeIn(openBook(book.snapshot), [file], { ...NO_ANSWERS, replace: true }, TODAY);
  if (!intake.ok) throw new Error(intake.reason(english));
  book.set(CONTACT, 0, "R µΩ", 41.5);
  if (withSecond) book.set(CONTACT, 1, "R µΩ", 41.7);
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
  if (!again.ok) throw new Error(again.reason(english));
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

test("one change made to several rows is told once, with their cells", () => {
  const one = brought(true);
  for (const row of [0, 1]) one.book.set(CONTACT, row, "Date", daySerial("2026-11-21"));
  expect(told(one)).toMatchObject([{ column: "Date", found: `${daySerial("2026-11-21")} × 2` }]);
});

test("a permit that was renewed or handed on is no changed reading; one that holds for fewer days is", () => {
  const permits = "GearPermits";
  const book = sound();
  const content =
    "For,Permit,Permit number,Valid from,Valid to,Holder,Day of the work\n" +
    "Lineup,Permit to work,PTW-7,2026-11-02,2026-11-13,A. Crew,2026-11-10\n";
  const file = { name: "permits.csv", content };
  const intake = takeIn(openBook(book.snapshot), [file], { ...NO_ANSWERS, replace: true }, TODAY);
  if (!intake.ok) throw new Error(intake.reason(english));
  const { remembered } = intake.before;
  const days = {
    "Valid from": "2026-11-02",
    "Valid to": "2026-11-13",
    "Day of the work": "2026-11-10",
  };
  book.set(permits, 0, "Permit number", "PTW-7");
  book.set(permits, 0, "Holder", "A. Crew");
  for (const [header, day] of Object.entries(days)) book.set(permits, 0, header, daySerial(day));
  const found = () => told({ book, remembered }).map(({ column, found }) => [column, found]);
  expect(found()).toEqual([]);
  book.set(permits, 0, "Valid to", daySerial("2026-11-20"));
  book.set(permits, 0, "Day of the work", daySerial("2026-11-17"));
  book.set(permits, 0, "Holder", "B. Crew");
  expect(found()).toEqual([]);
  book.set(permits, 0, "Valid to", daySerial("2026-11-12"));
  expect(found()).toEqual([["Valid to", String(daySerial("2026-11-12"))]]);
});
