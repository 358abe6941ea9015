import type { Reopened } from "../../intake/reopenRecord";
import type { Watch, WorkbookHost } from "../host";
import { fillKeeping } from "../readings/fillKeeping";

/**
 * Writes a repair and the failed readings into their sheets first, then takes them off the record, so that
 * none is lost wherever the work is cut short.
 *
 * @returns how many cells somebody changed meanwhile, which stay as they are
 */
export async function reopen(
  host: WorkbookHost,
  { before, cells }: Reopened,
  watch: Watch,
): Promise<number> {
  await host.change(before, watch);
  const { heldBack } = await fillKeeping(host, cells, watch);
  return heldBack.length;
}
