import type { Lineup } from "../lineup/lineup";
import type { Said } from "../messages/reasons";
import type { Told } from "../messages/told";
import type { Remembered } from "./kept/remembered";
import type { InstrumentRow } from "./ours/instrumentSheet";
import type { RecordTable } from "./recordTable";
import type { Snapshot } from "./snapshot";

/** A cell of somebody's own layout that is not understood, rows and columns from 0, and what to do about it. */
export interface LayoutProblem {
  readonly sheet: string;
  readonly row: number;
  readonly column: number;
  readonly message: Said<Told>;
}

/** A workbook understood as records: what check, intake and both hosts work from. */
export interface RecordBook {
  /** The workbook as it was read. */
  readonly snapshot: Snapshot;
  /** The lineup as the cover, panels and criteria sheets tell it; undefined where they do not tell it in full. */
  readonly told: Lineup | undefined;
  /** The lineup that the workbook was built for, else the one that its sheets tell. */
  readonly lineup: Lineup | undefined;
  /** Our own record tables, then the blocks of own layouts that maps make record tables of. */
  readonly tables: readonly RecordTable[];
  /** Undefined where the workbook has no table of instruments. */
  readonly instruments: ReadonlyMap<string, InstrumentRow> | undefined;
  readonly remembered: Remembered;
  /** What was not understood of own layouts. */
  readonly problems: readonly LayoutProblem[];
  /**
   * The very same object for books of which one is the other after cells of records were edited: their
   * tables stand in the same order then, and those that no edit reached are the same objects.
   */
  readonly frame: object;
}
