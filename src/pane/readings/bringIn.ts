import type { JudgedTable } from "../../check/context";
import { historyRows } from "../../intake/historyRows";
import type { Placement } from "../../intake/placement";
import { rememberIntake, undoIntake } from "../../intake/undo";
import {
  HISTORY_TABLE,
  historyUnwrites,
  historyWrites,
  newHistory,
} from "../../sheets/historySheet";
import type { LastIntake } from "../../sheets/lastIntake";
import type { RecordTable } from "../../sheets/recordTable";
import { NOTHING_REMEMBERED, type Remembered } from "../../sheets/remembered";
import { type Snapshot, tablesOf } from "../../sheets/snapshot";
import type { Host, Watch } from "../host";
import { today } from "../today";

const historyOf = (snapshot: Snapshot) =>
  tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);

const remembered = ({ maps, mappings, last }: Snapshot): Remembered => ({
  ...NOTHING_REMEMBERED,
  ...(maps && { maps }),
  ...(mappings && { mappings }),
  ...(last && { last }),
});

const cellKey = ({
  table,
  row,
  column,
}: {
  table: { table: { name: string } };
  row: number;
  column: string;
}) => JSON.stringify([table.table.name, row, column]);

/**
 * Writes placed readings; what they took the place of goes to the history, and what was written is
 * remembered so that it can be taken back.
 */
export async function bringIn(
  host: Host,
  snapshot: Snapshot,
  file: string,
  placement: Placement<RecordTable>,
  mappings: Remembered["mappings"],
  watch: Watch,
): Promise<{ readonly written: number; readonly heldBack: number }> {
  const { written, heldBack } = await host.fill(placement.placed, watch);
  const stayed = new Set(heldBack.map(cellKey));
  const kept = placement.kept.filter((one) => !stayed.has(cellKey(one)));
  const table = historyOf(snapshot);
  const history = historyWrites(historyRows(kept, today()), table);
  await host.change(
    {
      change: table ? [{ table, ...history }] : [],
      create: table || history.rows.length === 0 ? [] : [newHistory(history)],
      remembered: {
        ...remembered(snapshot),
        mappings,
        last: rememberIntake(written, [...history.rows], [file], today()),
      },
    },
    watch,
  );
  return { written: written.length, heldBack: heldBack.length };
}

/** Takes the last intake back, save the cells that were changed since. */
export async function takeBack(
  host: Host,
  snapshot: Snapshot,
  tables: readonly JudgedTable[],
  intake: LastIntake,
  watch: Watch,
): Promise<{ readonly written: number; readonly stay: number }> {
  const { cells, refused } = undoIntake(intake, tables);
  const { written, heldBack } = await host.fill(cells, watch);
  const table = historyOf(snapshot);
  const { last: _, ...others } = remembered(snapshot);
  await host.change(
    {
      change: table ? [{ table, added: 0, writes: historyUnwrites(intake.history, table) }] : [],
      remembered: others,
    },
    watch,
  );
  return { written: written.length, stay: refused.length + heldBack.length };
}
