import type { Basis } from "../../standards/criterion";
import type { Screen } from "../screen/screen";
import type { FileReport } from "./checkFile";

/** The check of one workbook and what is to be written of it. */
export interface Job {
  readonly book: string;
  readonly html?: string;
  readonly marked?: string;
  readonly sheet?: string;
  readonly punch?: string;
  readonly against?: string;
  /** Copies with result columns beside the tables of an own layout, and without them. */
  readonly addColumns?: string;
  readonly removeColumns?: string;
  /** How own layouts are read, and the lineup where the workbook does not tell it. */
  readonly map?: string;
  readonly lineup?: string;
  /** Rated voltage in kV and practice, for a workbook in somebody's own layout. */
  readonly rated?: number;
  readonly basis?: Basis;
  /** Whether nothing is kept beside the workbook: programs know what they answer. */
  readonly quiet?: boolean;
  /** Cores on which no other workbook is checked meanwhile. */
  readonly spare?: number;
  readonly day: number;
  /** Whether it is the check for hand-over. */
  readonly final?: boolean;
  /** Whether the matrix and the findings are told, or the summary alone. */
  readonly whole: boolean;
  /** Whether every finding is told, or the first of each cause. */
  readonly all?: boolean;
  /** What is written on; a page without colours where nothing is said. */
  readonly screen?: Screen;
}

/** What a job came to; plain data, so that a worker can send it. */
export interface Checked {
  readonly report: FileReport;
  readonly told: string;
}
