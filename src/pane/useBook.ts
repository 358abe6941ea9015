import { useCallback, useEffect, useRef, useState } from "react";
import type { Report } from "../check/check";
import type { FindingsText } from "../messages/messages";
import { today } from "../quantities/today";
import { useText } from "../report/text";
import type { Snapshot } from "../sheets/snapshot";
import type { Rows, Touched, Watch, WorkbookHost } from "./host";
import type { RowChoice } from "./rowChoice";

/** The workbook as the pane knows it. */
export interface OpenedWorkbook {
  readonly snapshot: Snapshot;
  /** What the check comes to; undefined where the workbook cannot be checked, and why. */
  readonly report: Report | undefined;
  readonly uncheckable: string | undefined;
  /** True while the formulas of the workbook are still being read: its values have been checked. */
  readonly isPartly?: true;
}

const engine = () => import("./engine");
type Engine = Awaited<ReturnType<typeof engine>>;

const bookOf = (snapshot: Snapshot, checked: ReturnType<Engine["check"]>): OpenedWorkbook => ({
  snapshot,
  report: checked.ok ? checked.report : undefined,
  uncheckable: checked.ok ? undefined : checked.reason,
});

const checkedBook = ({ check, openBook }: Engine, snapshot: Snapshot, text: FindingsText) =>
  bookOf(snapshot, check(openBook(snapshot), today(), text));

/**
 * Keeps what the pane shows in step with the workbook: reads it once, then after an edit only the rows
 * that it reached, and checks only their table again.
 *
 * @param quiet true while a longer piece of work goes on, after which the workbook is read in any case
 */
export function useBook(host: WorkbookHost, quiet: () => boolean) {
  const { findings: text } = useText();
  const [book, setBook] = useState<OpenedWorkbook>();
  /** True where the workbook has changed in a way that only reading it whole can follow. */
  const [stale, setStale] = useState(false);
  /** The record row that is selected in the workbook. */
  const [selected, setSelected] = useState<RowChoice>();
  /** The record row that was typed in last. */
  const [edited, setEdited] = useState<RowChoice>();
  const current = useRef<OpenedWorkbook>(undefined);

  const keep = useCallback((next: OpenedWorkbook) => {
    current.current = next;
    setBook(next);
  }, []);

  const read = useCallback(
    async (watch: Watch) => {
      const loading = engine();
      const checked = async (snapshot: Snapshot) => checkedBook(await loading, snapshot, text);
      try {
        const snapshot = await host.read(watch, {
          // Shown, and left at that: what the pane works on is the workbook as it is read whole.
          valuesRead: async (snapshot) => {
            setBook({ ...(await checked(snapshot)), isPartly: true });
            await shown();
          },
        });
        const next = await checked(snapshot);
        setStale(false);
        keep(next);
        return next;
      } catch (error) {
        setBook(current.current);
        throw error;
      }
    },
    [host, keep, text],
  );

  /** Reads rows again, and those whose formulas changed with them. */
  const reread = useCallback(
    async (rows: readonly Rows[]): Promise<OpenedWorkbook | undefined> => {
      const before = current.current;
      if (!before) return undefined;
      const { changedRows, check, openBook, recheck, reopenBook } = await engine();
      const snapshot = await host.reread(before.snapshot, rows);
      if (!snapshot) {
        setStale(true);
        return undefined;
      }
      const next = bookOf(
        snapshot,
        before.report
          ? recheck(before.report, reopenBook(before.report.context.book, snapshot))
          : check(openBook(snapshot), today(), text),
      );
      keep(next);
      const further =
        before.report && next.report
          ? furtherRows(before.report, next.report, rows, changedRows)
          : [];
      return further.length > 0 ? reread(further) : next;
    },
    [host, keep, text],
  );

  useEffect(() => {
    const follow = inTurn(async (edits) => {
      const { editedRows } = await engine();
      const before = current.current;
      if (!before || quiet()) return;
      const rows = edits.map(({ sheetId, address, moved }) =>
        moved ? undefined : editedRows(before.snapshot, sheetId, address),
      );
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
  }, [host, reread, quiet]);

  return { book, stale, selected, edited, setEdited, read, reread };
}

/** Until what was set is on the screen. */
const shown = () => new Promise<void>((done) => setTimeout(done));

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
function merged(found: readonly Rows[]): Rows[] {
  const all = new Map<object, { readonly one: Rows; readonly rows: Set<number> }>();
  for (const one of found) {
    const of = "table" in one ? one.table : one.cells;
    const known = all.get(of) ?? { one, rows: new Set<number>() };
    for (const row of one.rows) known.rows.add(row);
    all.set(of, known);
  }
  return [...all.values()].map(({ one, rows }) => ({ ...one, rows: [...rows] }));
}

/** Rows of our tables that were not read again and whose formulas come to something else now. */
function furtherRows(
  before: Report,
  after: Report,
  rows: readonly Rows[],
  changedRows: Engine["changedRows"],
): Rows[] {
  const tables = rows.flatMap((one) => ("table" in one ? one : []));
  return after.context.tables.flatMap((table) => {
    const known = before.context.tables.find((one) => one.table.name === table.table.name);
    if (!known || known === table || table.table.ownLayout) return [];
    const done = new Set(tables.find((one) => one.table.name === table.table.name)?.rows ?? []);
    const further = changedRows(known, table).filter((row) => !done.has(row));
    return further.length > 0 ? [{ table: table.table, rows: further }] : [];
  });
}
