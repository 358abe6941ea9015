import type { Unit } from "../quantities/units";
import type { Facts, Stage, SurveyColumn } from "./find/block";
import type { FoundTable } from "./find/findTables";
import type { Cell, SheetView } from "./read/cells";
import type { Concept } from "./words/words";

/** What stands around a table and counts for it. */
export interface Around {
  readonly facts: Facts;
  /** Lines of words that belong to the table. */
  readonly heading: readonly Cell[];
  /** Lines of words over the table, the nearest first, then the sheet's name. */
  readonly words: readonly string[];
  /** The panel that form, heading or sheet name tell for all lines. */
  readonly panel: string;
  /** Whether a form or a heading tells it, and not the sheet's name alone. */
  readonly isPanelTold: boolean;
  /** The unit of values whose titles carry none. */
  readonly unit?: Unit;
  readonly stage?: Stage;
  /** Cells that somebody has pointed at, which hold for lines that say none themselves. */
  readonly pointed?: Beside;
}

/** A line of a table, with what the banner over it says. */
export interface Line {
  readonly row: number;
  readonly cells: readonly Cell[];
  readonly facts: Facts;
  readonly banner: string | undefined;
}

/** A table on its way to be a block. */
export interface Draft {
  readonly view: SheetView;
  readonly table: FoundTable;
  readonly columns: readonly SurveyColumn[];
  readonly around: Around;
}

/** A column that holds readings, with the kind of record that they belong to. */
export interface Measure {
  readonly column: SurveyColumn;
  readonly kind: string;
}

/** The cells of a line by what they are about. */
export type Beside = Partial<Record<Concept, Cell>>;
/** The cell of a line in a column. */
export type CellOf = (column: SurveyColumn) => Cell | undefined;
