import { expect, test } from "vitest";
import * as core from "../../src/check/check";
import { openBook, reopenBook } from "../../src/intake/openBook";
import type { FindingsText } from "../../src/messages/messages";
import { TEXT } from "../support/checkBook";
import { CONTACT, cellOf, INSULATION, sound, TODAY, TORQUE, WITHSTAND } from "./support";

const MARK = "¤ ";

/** Another language: the texts as they are, each behind a mark. */
const marked = (part: unknown): unknown => {
  if (typeof part === "string") return MARK + part;
  if (typeof part === "function") return (...given: unknown[]) => MARK + part(...given);
  return Object.fromEntries(
    Object.entries(part as object).map(([name, inner]) => [name, marked(inner)]),
  );
};
const OTHER = marked(TEXT) as FindingsText;

const reportOf = (checked: ReturnType<typeof core.check>): core.Report => {
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};

/** A workbook with something to say by many rules. */
const spoilt = () => {
  const book = sound();
  const { value, formula } = cellOf(book, CONTACT, 4, "Result");
  book.set(INSULATION, 0, "R 1 min MΩ", 0.1);
  book.set(INSULATION, 1, "R 1 min MΩ", "about 5");
  book.set(INSULATION, 2, "R 1 min MΩ", null);
  book.set(INSULATION, 3, "Date", null);
  book.set(INSULATION, 4, "Instrument", "not listed");
  book.set(INSULATION, 5, "Date", TODAY + 400);
  book.set(WITHSTAND, 0, "Applied kV", 60);
  book.set(CONTACT, 4, "Result", value, `${formula}&""`);
  book.set(CONTACT, 5, "Result", cellOf(book, CONTACT, 5, "Result").value);
  book.set(CONTACT, 6, "Maximum µΩ", 999);
  book.set(TORQUE, 0, "Bolt", "of another name");
  return book;
};

test("findings are in the language that is handed down, and a recheck keeps it", () => {
  const book = spoilt();
  const report = reportOf(core.check(openBook(book.snapshot), TODAY, OTHER));
  expect(new Set(report.findings.map(({ rule }) => rule)).size).toBeGreaterThanOrEqual(9);
  expect(report.findings.filter(({ message }) => !message.startsWith(MARK))).toEqual([]);

  book.set(TORQUE, 3, "Applied N·m", 1);
  const again = reportOf(core.recheck(report, reopenBook(report.context.book, book.snapshot)));
  const fresh = again.findings.filter((finding) => !report.findings.includes(finding));
  expect(fresh.length).toBeGreaterThan(0);
  expect(again.findings.filter(({ message }) => !message.startsWith(MARK))).toEqual([]);
});

test("what a concession is matched by is the same in every language", () => {
  const book = spoilt();
  for (const row of [6, 7, 8]) book.set(INSULATION, row, "Instrument", "not listed");
  book.set(TORQUE, 1, "Joint group", null);
  const named = (text: FindingsText) =>
    reportOf(core.check(openBook(book.snapshot), TODAY, text)).findings.map(
      ({ rule, sheet, row, column, found }) => [rule, sheet, row, column, found],
    );
  expect(named(OTHER)).toEqual(named(TEXT));
});

test("so is the reason why a workbook cannot be checked", () => {
  const checked = core.check(openBook({ sheets: [] }), TODAY, OTHER);
  expect(checked).toEqual({ ok: false, reason: MARK + TEXT.uncheckable.noRecords });
});
