import { type RefObject, useEffect, useState } from "react";
import type { Snapshot } from "../sheets/snapshot";
import type { Rows, Touched, WorkbookHost } from "./host";
import type { OpenedWorkbook } from "./openedWorkbook";
import type { RowChoice } from "./rowChoice";

const engine = () => import("./engine");

/** What following edits works with. */
interface Followed {
  readonly current: RefObject<OpenedWorkbook | undefined>;
  /** Edits that were told of during a longer piece of work, which that reads at its end. */
  readonly meanwhile: RefObject<Touched[]>;
  readonly reread: (rows: readonly Rows[]) => Promise<OpenedWorkbook | undefined>;
  readonly setStale: (stale: boolean) => void;
  /** True while a longer piece of work goes on. */
  readonly quiet: () => boolean;
}

/** Listens to the workbook: rows that a person edits are read again, and the row that is selected is told. */
export function useEdits(
  host: WorkbookHost,
  { current, meanwhile, reread, setStale, quiet }: Followed,
) {
  /** The record row that is selected in the workbook. */
  const [selected, setSelected] = useState<RowChoice>();
  /** The record row that was typed in last. */
  const [edited, setEdited] = useState<RowChoice>();
  useEffect(() => {
    const follow = inTurn(async (edits) => {
      const { editedRows } = await engine();
      const before = current.current;
      if (!before) return;
      if (quiet()) {
        meanwhile.current.push(...edits);
        return;
      }
      const rows = edits.map(rowsOf(before.snapshot, editedRows));
      if (rows.some((reached) => reached === undefined)) setStale(true);
      const reached = merged(rows.flatMap((part) => part ?? []));
      if (reached.length > 0) await reread(reached);
      const row = firstRow(before, reached);
      if (row) setEdited(row);
    });
    void host.listen({
      // What stands in the way of this reading stands in the way of the next one too, which says so.
      edited: (cells) => void follow(cells).catch(() => setStale(true)),
      selected: async (cells) => {
        const choice = await selectedRow(current.current, cells);
        if (choice) setSelected(choice);
      },
    });
  }, [host, current, meanwhile, reread, setStale, quiet]);

  return { selected, edited, setEdited };
}

type EditedRows = Awaited<ReturnType<typeof engine>>["editedRows"];

/** The rows that an edit reaches; undefined where only reading the whole workbook can follow. */
export const rowsOf =
  (snapshot: Snapshot, editedRows: EditedRows) =>
  ({ sheetId, address, moved }: Touched): Rows[] | undefined =>
    moved ? undefined : editedRows(snapshot, sheetId, address);

/** Does work on what has come in meanwhile, one piece after the other. */
function inTurn(work: (edits: readonly Touched[]) => Promise<void>) {
  let waiting: Touched[] = [];
  let working = false;
  return async (edit: Touched): Promise<void> => {
    waiting.push(edit);
    if (working) return;
    working = true;
    // What the workbook tells together is read together.
    await new Promise((told) => setTimeout(told));
    try {
      while (waiting.length > 0) {
        const edits = waiting;
        waiting = [];
        await work(edits);
      }
    } finally {
      working = false;
    }
  };
}

/** The record row of one of our tables that a selection of cells begins with. */
async function selectedRow(
  book: OpenedWorkbook | undefined,
  { sheetId, address }: Touched,
): Promise<RowChoice | undefined> {
  if (!book?.report) return undefined;
  const { editedRows } = await engine();
  return firstRow(book, editedRows(book.snapshot, sheetId, address) ?? []);
}

/** The first record row of one of our tables among rows. */
function firstRow({ report }: OpenedWorkbook, reached: readonly Rows[]): RowChoice | undefined {
  const [first] = reached.flatMap((part) => ("table" in part ? part : []));
  const chosen = report?.context.tables.find(({ table }) => table === first?.table);
  const row = first?.rows[0];
  return chosen && row !== undefined ? { kind: chosen.kind.id, object: undefined, row } : undefined;
}

/** Rows of tables and sheets named more than once put together. */
export function merged(found: readonly Rows[]): Rows[] {
  const all = new Map<object, { readonly one: Rows; readonly rows: Set<number> }>();
  for (const one of found) {
    const of = "table" in one ? one.table : one.cells;
    const known = all.get(of) ?? { one, rows: new Set<number>() };
    for (const row of one.rows) known.rows.add(row);
    all.set(of, known);
  }
  return [...all.values()].map(({ one, rows }) => ({ ...one, rows: [...rows] }));
}
