import type { Finding } from "../check/findings/finding";
import type { BookFile } from "../excel/bookFile";
import type { Built } from "../excel/build/undoBuild";
import type { ReadOptions } from "../excel/read/readSheets";
import type { SelectedCells } from "../excel/read/selectedCells";
import type { Filled } from "../intake/place/filled";
import type { PlacedCell } from "../intake/place/placement";
import type { BesideTable } from "../sheets/besideTable";
import type { SheetRows, TableRows } from "../sheets/editedRows";
import type { Changes } from "../sheets/plan/changes";
import type { Plan } from "../sheets/plan/plan";
import type { RecordTable } from "../sheets/recordTable";
import type { Snapshot } from "../sheets/snapshot";

/** How a long piece of work is watched and stopped. */
export interface Watch {
  readonly progress: (done: number, total: number) => void;
  readonly signal: AbortSignal;
}

/** Cells that a person edited or selected. */
export interface Touched {
  readonly sheetId: string;
  readonly address: string;
  /** True where cells, rows or columns moved, so that what was read is out of place. */
  readonly moved: boolean;
}

export type { Built };
export type Rows = TableRows | SheetRows;

/** What the pane needs of the workbook that it stands beside. */
export interface WorkbookHost {
  /**
   * @param options of which sheets all cells are read, those that are mapped where it is not said; and who
   * is told of a large workbook once its values are there
   */
  read(watch: Watch, options?: Pick<ReadOptions, "sheets" | "valuesRead">): Promise<Snapshot>;
  /** The snapshot with these rows read again; undefined where the whole workbook must be read. */
  reread(snapshot: Snapshot, rows: readonly Rows[]): Promise<Snapshot | undefined>;
  listen(told: {
    readonly edited: (cells: Touched) => void;
    readonly selected: (cells: Touched) => void;
  }): Promise<void>;
  build(plan: Plan, watch: Watch): Promise<Built>;
  /** Takes a build back, where the workbook is still as it was read after it. */
  undoBuild(built: Built, after: Snapshot, watch: Watch): Promise<void>;
  fill(cells: readonly PlacedCell<RecordTable>[], watch: Watch): Promise<Filled>;
  mark(findings: readonly Finding[], watch: Watch): Promise<{ readonly cells: number }>;
  clearMarks(watch: Watch): Promise<number>;
  /** Puts result columns beside the user's own tables; those of before make way. */
  addBeside(tables: readonly BesideTable[], watch: Watch): Promise<void>;
  /** Takes them off again; for how many tables there were any. */
  removeBeside(watch: Watch): Promise<number>;
  /** Writes rows of tables of ours, puts sheets of ours there, and keeps what is to be remembered. */
  change(changes: Changes, watch: Watch): Promise<void>;
  /** The workbook as a file, as it stands now. */
  file(): Promise<BookFile>;
  goTo(sheet: string, address: string): Promise<void>;
  /** The cells that are selected, with what they hold. */
  selectedCells(): Promise<SelectedCells>;
  /** Writes a formula into the selected cell, where that is empty. */
  insert(formula: string): Promise<{ readonly sheet: string; readonly address: string }>;
  /** The first of the cells that are selected. */
  selected(): Promise<{ readonly sheet: string; readonly address: string }>;
}
