import type { NotPutBack } from "../../excel/write/putBack";
import { lostToHistory } from "../../intake/lostToHistory";
import type { Filled } from "../../intake/place/filled";
import type { PlacedCell } from "../../intake/place/placement";
import { today } from "../../quantities/today";
import type { RecordTable } from "../../sheets/recordTable";
import type { Watch, WorkbookHost } from "../host";

/**
 * Writes cells. What was typed meanwhile, written over and could not be put back goes to the history, as far
 * as that can be written.
 */
export async function fillKeeping(
  host: WorkbookHost,
  cells: readonly PlacedCell<RecordTable>[],
  watch: Watch,
): Promise<Filled> {
  try {
    return await host.fill(cells, watch);
  } catch (error) {
    const lost = isNotPutBack(error) ? error.lost.filter(({ value }) => value !== null) : [];
    if (lost.length > 0)
      try {
        await host.change(lostToHistory(await host.read(watch), lost, today()), watch);
      } catch {
        // The error that is told names the cells and what they held.
      }
    throw error;
  }
}

const isNotPutBack = (error: unknown): error is NotPutBack =>
  error instanceof Error && error.name === "NotPutBack";
