import type { NotPutBack } from "../../excel/write/putBack";
import { takeBack } from "../../intake/takeBack";
import {
  historyRemoval,
  type Intake,
  lostToHistory,
  placesOf,
  withoutHeldBack,
} from "../../intake/takeIn";
import { historyWithout } from "../../intake/undo";
import { today } from "../../quantities/today";
import type { RecordBook } from "../../sheets/recordBook";
import type { Watch, WorkbookHost } from "../host";

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
  const { written, heldBack } = await keepingLost(
    host,
    intake.today,
    watch,
    host.fill(intake.cells, watch),
  );
  if (written.length < intake.cells.length) {
    const { gone, remembered } = withoutHeldBack(book, intake, written, heldBack);
    const change = gone.length > 0 ? historyRemoval(await host.read(watch), gone) : [];
    await host.change({ change, remembered }, watch);
  }
  return { written: written.length, heldBack: heldBack.length };
}

/** What was typed meanwhile, written over and could not be put back goes to the history, as far as that can be written. */
async function keepingLost<T>(
  host: WorkbookHost,
  today: number,
  watch: Watch,
  work: Promise<T>,
): Promise<T> {
  try {
    return await work;
  } catch (error) {
    const lost = isNotPutBack(error) ? error.lost.filter(({ value }) => value !== null) : [];
    if (lost.length > 0)
      try {
        await host.change(lostToHistory(await host.read(watch), lost, today), watch);
      } catch {
        // The error that is told names the cells and what they held.
      }
    throw error;
  }
}

const isNotPutBack = (error: unknown): error is NotPutBack =>
  error instanceof Error && error.name === "NotPutBack";

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
  const filling = host.fill(back.cells, watch);
  const { written, heldBack } = await keepingLost(host, today(), watch, filling);
  const entries = historyWithout(back.history, placesOf(heldBack));
  await host.change(
    { change: historyRemoval(book.snapshot, entries), remembered: back.remembered },
    watch,
  );
  return { written: written.length, stay: back.refused.length + heldBack.length };
}
