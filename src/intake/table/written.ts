import type { Unit } from "../../quantities/units";

/** One text of an export whose field is recognised: a cell of a line, or a fact from the block above the table. */
export interface Written {
  readonly field: string;
  readonly title: string;
  readonly text: string;
  readonly unit?: Unit;
  /** Its column, where it is a cell. */
  readonly index?: number;
}
