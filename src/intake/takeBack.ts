import type { LastIntake } from "../sheets/kept/lastIntake";
import type { Remembered } from "../sheets/kept/remembered";
import type { RecordBook } from "../sheets/recordBook";
import type { RecordTable } from "../sheets/recordTable";
import { type Undone, undoIntake, withoutIntake } from "./undo";

/** What taking the last intake back comes to. Nothing is written yet. */
export interface TakeBack extends Undone<RecordTable> {
  readonly last: LastIntake;
  /** What the workbook is to remember once the cells are written. */
  readonly remembered: Remembered;
}

/** Takes the last intake of a workbook back; undefined where it remembers none. */
export const takeBack = ({ remembered, tables }: RecordBook): TakeBack | undefined => {
  const { last } = remembered;
  return last && { ...undoIntake(last, tables), last, remembered: withoutIntake(remembered) };
};
