import type { PlacedCell } from "../../intake/place/placement";
import { takeBack } from "../../intake/takeBack";
import { historyRemoval, type Intake, placesOf, withoutHeldBack } from "../../intake/takeIn";
import { historyWithout } from "../../intake/undo";
import type { Remembered } from "../../sheets/kept/remembered";
import type { RecordBook } from "../../sheets/recordBook";
import type { RecordTable } from "../../sheets/recordTable";
import type { Watch, WorkbookHost } from "../host";
import { fillKeeping } from "./fillKeeping";

/** What became of a piece of work that writes readings. */
interface Brought {
  /** Cells that hold something else now. */
  readonly written: number;
  /**
   * What has changed in the workbook, where that is known to the cell: all was written as it was placed, and
   * nothing went to the history.
   */
  readonly alone?: Alone;
}

/** Readings that were written, what the workbook remembers of them, and nothing else. */
export interface Alone {
  readonly cells: readonly PlacedCell<RecordTable>[];
  readonly remembered: Remembered;
}

/**
 * Writes an intake. What its readings take the place of goes to the history, and what is to be written is
 * remembered, before the first of them is written: so nothing is lost, and what was written can be taken
 * back, wherever the work is cut short. What turns out to be held back is taken out of both again.
 */
export async function bringIn(
  host: WorkbookHost,
  book: RecordBook,
  intake: Intake,
  watch: Watch,
): Promise<Brought & { readonly heldBack: number }> {
  await host.change(intake.before, watch);
  const { written, heldBack } = await fillKeeping(host, intake.cells, watch);
  const isWhole = written.length === intake.cells.length;
  if (!isWhole) {
    const { gone, remembered } = withoutHeldBack(book, intake, written, heldBack);
    const change = gone.length > 0 ? historyRemoval(await host.read(watch), gone) : [];
    await host.change({ change, remembered }, watch);
  }
  return {
    written: written.length,
    heldBack: heldBack.length,
    ...(isWhole && intake.history.length === 0
      ? { alone: { cells: written, remembered: intake.before.remembered } }
      : {}),
  };
}

/**
 * Takes the last intake back, save the cells that were changed since: what they had held stays in the
 * history. The history and the memory follow the cells, so that it can be gone on with where the work is
 * cut short.
 */
export async function bringBack(
  host: WorkbookHost,
  book: RecordBook,
  watch: Watch,
): Promise<Brought & { readonly stay: number }> {
  const back = takeBack(book);
  if (!back) return { written: 0, stay: 0 };
  const { written, heldBack } = await fillKeeping(host, back.cells, watch);
  const entries = historyWithout(back.history, placesOf(heldBack));
  await host.change(
    { change: historyRemoval(book.snapshot, entries), remembered: back.remembered },
    watch,
  );
  return {
    written: written.length,
    stay: back.refused.length + heldBack.length,
    ...(written.length === back.cells.length && back.history.length === 0
      ? { alone: { cells: written, remembered: back.remembered } }
      : {}),
  };
}
