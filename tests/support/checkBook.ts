import * as core from "../../src/check/check";
import { openBook, reopenBook } from "../../src/intake/openBook";
import { messagesFor } from "../../src/messages/messages";
import type { Snapshot } from "../../src/sheets/snapshot";

/** What findings say in the tests. */
export const TEXT = messagesFor("en").findings;

/** The check of a workbook as it was read, which both hosts open first. */
export const check = (snapshot: Snapshot, today: number, isFinal = false) =>
  core.check(openBook(snapshot), today, TEXT, isFinal);

/** The check after an edit. */
export const recheck = (before: core.Report, snapshot: Snapshot) =>
  core.recheck(before, reopenBook(before.context.book, snapshot));

/** What the check of a workbook comes to, where it can be checked. */
export const reportOf = (snapshot: Snapshot, today: number, isFinal = false): core.Report => {
  const checked = check(snapshot, today, isFinal);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};
