import { BookError } from "../sheets/bookError";
import type { Open } from "./write/aim";

/** What is asked of cells so as to know whether they may be written. */
interface Shut {
  readonly sheet: string;
  readonly target: Excel.Range;
  readonly protection: Excel.WorksheetProtection;
}

/** Asks whether the cells of a run are locked on a protected sheet. */
export function askShut({ workbook }: Excel.RequestContext, { run, target }: Open): Shut {
  const { protection } = workbook.worksheets.getItem(run.sheet);
  protection.load("protected");
  target.load("format/protection/locked");
  return { sheet: run.sheet, target, protection };
}

/** @throws {BookError} where cells that are to be written are locked */
export function refuseShut(asked: readonly Shut[]): void {
  const shut = asked.find(
    ({ target, protection }) => protection.protected && target.format.protection.locked !== false,
  );
  if (shut) throw new BookError(({ excel }) => excel.cellsShut(shut.sheet));
}
