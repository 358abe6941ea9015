import { takeBack } from "../../intake/takeBack";
import { historyRemoval, type Intake, placesOf, withoutHeldBack } from "../../intake/takeIn";
import { historyWithout } from "../../intake/undo";
import type { RecordBook } from "../../sheets/recordBook";
import type { Watch, WorkbookHost } from "../host";
import { fillKeeping } from "./fillKeeping";

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
): Promise<{ readonly written: number; readonly heldBack: number }> {
  await host.change(intake.before, watch);
  const { written, heldBack } = await fillKeeping(host, intake.cells, watch);
  if (written.length < intake.cells.length) {
    const { gone, remembered } = withoutHeldBack(book, intake, written, heldBack);
    const change = gone.length > 0 ? historyRemoval(await host.read(watch), gone) : [];
    await host.change({ change, remembered }, watch);
  }
  return { written: written.length, heldBack: heldBack.length };
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
): Promise<{ readonly written: number; readonly stay: number }> {
  const back = takeBack(book);
  if (!back) return { written: 0, stay: 0 };
  const { written, heldBack } = await fillKeeping(host, back.cells, watch);
  const entries = historyWithout(back.history, placesOf(heldBack));
  await host.change(
    { change: historyRemoval(book.snapshot, entries), remembered: back.remembered },
    watch,
  );
  return { written: written.length, stay: back.refused.length + heldBack.length };
}
