import type { RecordTable } from "../../sheets/recordTable";
import type { PlacedCell } from "./placement";

type Placed = PlacedCell<RecordTable>;

/** What became of the cells that were to be filled. */
export interface Filled {
  readonly written: readonly Placed[];
  /** Cells that hold the value already. */
  readonly same: readonly Placed[];
  /** Cells that somebody changed since they were read, or whose row moved; they are as they were found. */
  readonly heldBack: readonly Placed[];
}
