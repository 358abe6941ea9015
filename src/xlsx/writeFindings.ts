import type { Report } from "../check/check";
import { findingsSheet } from "../check/findings/findingsSheet";
import { punchChanges } from "../check/punch/punchWrites";
import { writesOf } from "../sheets/plan/appended";
import { papersOf } from "../sheets/plan/plannedSheet";
import { openFile } from "./book";
import { draftSheet } from "./draftSheet";
import { writeCells } from "./file";
import { BookEdit } from "./patch/bookEdit";
import { understood } from "./readBook";

/** A copy of a workbook file with the findings of its check on a sheet of their own; everything else stays. */
export const withFindings = (
  file: Uint8Array,
  report: Pick<Report, "findings" | "context">,
): Promise<Uint8Array> =>
  understood(async () => {
    const book = new BookEdit(openFile(file));
    const planned = findingsSheet(report, report.context.text, papersOf(report.context.lineup));
    book.renewSheet(draftSheet(planned, writesOf(planned)));
    return book.save();
  });

/** A copy of a workbook file with its punch list brought up to date; everything else stays. */
export const withPunchList = (file: Uint8Array, report: Report): Promise<Uint8Array> => {
  const changes = punchChanges(report);
  return writeCells(file, changes.change ?? [], changes);
};
