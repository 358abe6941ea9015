import type { Lineup } from "../../lineup/lineup";
import type { Remembered } from "../kept/remembered";
import type { Reconciled, TableChange } from "./reconcile";

/** What is to be written into a workbook besides readings. */
export interface Changes {
  /** Sheets of ours that the workbook does not have. */
  readonly create?: Reconciled["create"];
  /** Sheets of ours that are made anew; the one of before goes. */
  readonly renew?: Reconciled["create"];
  readonly change?: readonly Omit<TableChange, "aside" | "renamed">[];
  readonly remembered?: Remembered;
  /** The lineup, where the workbook is to know it without record sheets of ours. */
  readonly lineup?: Lineup;
}
