import { expect, test } from "vitest";
import { matrixTable } from "../../src/cli/terminal";
import { commandLineFor } from "../../src/messages/commandLine";
import { INSULATION, reportOf, rowOf, sound, soundOf } from "../check/support";

const text = commandLineFor("en").check;

const LINES = /^.*=K\d{4}.*$/gm;
const named = (text: string) => [...text.matchAll(LINES)].length;

test("of few panels all are listed", () => {
  expect(named(matrixTable(reportOf(sound().snapshot), text))).toBe(3);
});

test("of many panels those that ask for something are listed, the others counted", () => {
  const book = soundOf(50);
  const clean = matrixTable(reportOf(book.snapshot), text);
  expect(clean).toBe("56 panels and sections pass in every row.");
  book.set(INSULATION, rowOf(book, INSULATION, "=K0017", "before"), "R 1 min MΩ", null);
  const asking = matrixTable(reportOf(book.snapshot), text);
  expect(named(asking)).toBe(1);
  expect(asking).toMatch(/=K0017 .*1 missing/);
  expect(asking).toMatch(/55 panels and sections pass in every row\.$/);
});
