import { type Sheet, saveXlsx } from "hucre/xlsx";
import type { Report } from "../check/check";
import { findingsSheet } from "../check/findingsSheet";
import { writesOf } from "../sheets/appended";
import { BookError } from "../sheets/bookError";
import { columnFormulas } from "../sheets/columnFormulas";
import { planFor } from "../sheets/plan";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { finish } from "./correctPackage";
import { openBook } from "./file";
import { newSheet } from "./newSheet";
import { readMemory } from "./remembered";

/** Puts a sheet of ours into a workbook in the place of the one it has from before; a sheet of another's stays. */
export function putSheet(workbook: { sheets: Sheet[] }, planned: PlannedSheet): void {
  const at = workbook.sheets.findIndex(
    ({ name }) => name.toLowerCase() === planned.sheet.toLowerCase(),
  );
  const there = workbook.sheets[at];
  const isOurs = there?.tables?.some(
    ({ displayName, name }) => (displayName ?? name) === planned.table,
  );
  if (there && !isOurs)
    throw new BookError(
      `has a sheet "${planned.sheet}" of its own, where the table ${planned.table} should go; rename that sheet`,
    );
  const fresh = newSheet(planned, writesOf(planned)) as Sheet;
  if (there) workbook.sheets[at] = fresh;
  else workbook.sheets.push(fresh);
}

/** A copy of a workbook file with the findings of its check on a sheet of their own; everything else stays. */
export async function withFindings(
  file: Uint8Array,
  report: Pick<Report, "findings" | "context">,
): Promise<Uint8Array> {
  const workbook = await openBook(file);
  putSheet(workbook, findingsSheet(report, report.context.text));
  const memory = readMemory(file);
  const formulas = memory ? columnFormulas(planFor(memory.lineup)) : new Map();
  return finish(await saveXlsx(workbook), workbook.sheets, memory, formulas);
}
