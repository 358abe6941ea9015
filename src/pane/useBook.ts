import { useCallback, useRef, useState } from "react";
import type { Report } from "../check/check";
import type { FindingsText } from "../messages/messages";
import { today } from "../quantities/today";
import { useText } from "../report/text";
import { withRemembered } from "../sheets/kept/remembered";
import type { Snapshot } from "../sheets/snapshot";
import type { Rows, Touched, Watch, WorkbookHost } from "./host";
import type { OpenedWorkbook } from "./openedWorkbook";
import type { Alone } from "./readings/bringIn";
import { merged, rowsOf, useEdits } from "./useEdits";

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
 * @param quiet true while a longer piece of work goes on, after which what it and others changed is read
 */
export function useBook(host: WorkbookHost, quiet: () => boolean) {
  const { findings: text } = useText();
  const [book, setBook] = useState<OpenedWorkbook>();
  /** True where the workbook has changed in a way that only reading it whole can follow. */
  const [stale, setStale] = useState(false);
  const current = useRef<OpenedWorkbook>(undefined);
  /** Edits that were told of during a longer piece of work. */
  const meanwhile = useRef<Touched[]>([]);

  const keep = useCallback((next: OpenedWorkbook) => {
    current.current = next;
    setBook(next);
  }, []);

  const read = useCallback(
    async (watch: Watch) => {
      const loading = engine();
      meanwhile.current = [];
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

  /**
   * Reads again the rows that readings were written into, and those that were edited meanwhile; the whole
   * workbook where more has changed.
   */
  const readFilled = useCallback(
    async (watch: Watch, filled: Alone | undefined): Promise<OpenedWorkbook> => {
      const before = current.current;
      if (!before || !filled) return read(watch);
      const { editedRows, filledRows } = await engine();
      const rows = [
        filledRows(before.snapshot, filled.cells),
        ...meanwhile.current.splice(0).map(rowsOf(before.snapshot, editedRows)),
      ];
      if (rows.includes(undefined)) return read(watch);
      const snapshot = withRemembered(before.snapshot, filled.remembered);
      current.current = { ...before, snapshot };
      return (await reread(merged(rows.flatMap((part) => part ?? [])))) ?? read(watch);
    },
    [read, reread],
  );

  const told = useEdits(host, { current, meanwhile, reread, setStale, quiet });

  return { book, stale, ...told, read, readFilled, reread };
}

/** Until what was set is on the screen. */
const shown = () => new Promise<void>((done) => setTimeout(done));

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
