import type { Report } from "../check/check";
import type { Snapshot } from "../sheets/snapshot";

/** The workbook as the pane knows it. */
export interface OpenedWorkbook {
  readonly snapshot: Snapshot;
  /** What the check comes to; undefined where the workbook cannot be checked, and why. */
  readonly report: Report | undefined;
  readonly uncheckable: string | undefined;
  /** True while the formulas of the workbook are still being read: its values have been checked. */
  readonly isPartly?: true;
}
