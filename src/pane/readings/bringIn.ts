import { historyPlace, historyRows } from "../../intake/historyRows";
import type { PlacedCell, Placement } from "../../intake/place/placement";
import {
  historyWithout,
  rememberIntake,
  undoIntake,
  withIntake,
  withoutIntake,
} from "../../intake/undo";
import type { LastIntake } from "../../sheets/lastIntake";
import {
  HISTORY_TABLE,
  historyUnwrites,
  historyWrites,
  newHistory,
} from "../../sheets/ours/historySheet";
import type { RecordTable } from "../../sheets/recordTable";
import { type Remembered, rememberedOf } from "../../sheets/remembered";
import { type Snapshot, tablesOf } from "../../sheets/snapshot";
import type { Host, Watch } from "../host";
import { today } from "../today";

type Cell = PlacedCell<RecordTable>;

const historyOf = (snapshot: Snapshot) =>
  tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);

/**
 * Writes placed readings. What they take the place of goes to the history, and what is to be written is
 * remembered, before the first of them is written: so nothing is lost, and what was written can be taken
 * back, wherever the work is cut short. What turns out to be held back is taken out of both again.
 */
export async function bringIn(
  host: Host,
  snapshot: Snapshot,
  tables: readonly RecordTable[],
  file: string,
  { placed, kept }: Placement<RecordTable>,
  mappings: Remembered["mappings"],
  watch: Watch,
): Promise<{ readonly written: number; readonly heldBack: number }> {
  const before = { ...rememberedOf(snapshot), mappings };
  const table = historyOf(snapshot);
  const history = historyWrites(historyRows(kept, today()), table);
  const intake = (cells: readonly Cell[], entries: LastIntake["history"]) =>
    withIntake(before, rememberIntake(cells, entries, [file], today()), tables);
  await host.change(
    {
      change: table ? [{ table, ...history }] : [],
      create: table || history.rows.length === 0 ? [] : [newHistory(history)],
      remembered: intake(placed, [...history.rows]),
    },
    watch,
  );
  const { written, heldBack } = await host.fill(placed, watch);
  if (written.length < placed.length) {
    const stay = written.length > 0 ? historyWithout([...history.rows], places(heldBack)) : [];
    const gone = history.rows.filter((entry) => !stay.includes(entry));
    await host.change(
      {
        change: gone.length > 0 ? takenOut(gone, await host.read(watch)) : [],
        remembered: intake(written, stay),
      },
      watch,
    );
  }
  return { written: written.length, heldBack: heldBack.length };
}

const places = (cells: readonly Cell[]) =>
  cells.map(({ table, row, column }) => historyPlace(table, row, column));

/** What is to be changed so that the history lacks these entries. */
const takenOut = (entries: LastIntake["history"], snapshot: Snapshot) => {
  const table = historyOf(snapshot);
  return table ? [{ table, added: 0, writes: historyUnwrites(entries, table) }] : [];
};

/**
 * Takes the last intake back, save the cells that were changed since: what they had held stays in the
 * history. The history and the memory follow the cells, so that it can be gone on with where the work is
 * cut short.
 */
export async function takeBack(
  host: Host,
  snapshot: Snapshot,
  tables: readonly RecordTable[],
  intake: LastIntake,
  watch: Watch,
): Promise<{ readonly written: number; readonly stay: number }> {
  const { cells, refused, history } = undoIntake(intake, tables);
  const { written, heldBack } = await host.fill(cells, watch);
  await host.change(
    {
      change: takenOut(historyWithout(history, places(heldBack)), snapshot),
      remembered: withoutIntake(rememberedOf(snapshot)),
    },
    watch,
  );
  return { written: written.length, stay: refused.length + heldBack.length };
}
