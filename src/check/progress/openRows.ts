import { memoizeFor } from "../../quantities/memoizeFor";
import { isBlank, keyIds, type RecordKind, type Row } from "../../records/kind";

/**
 * The state of a row: open, where nothing is recorded of its test yet; begun, where something is recorded
 * and something missing; else judged.
 */
export type RowState = "open" | "begun" | "judged";

/**
 * What the check makes of open rows:
 * - `progress`: work that was not to have been done yet, and no finding
 * - `gathered`: at hand-over, a finding for each panel and record
 * - `missing`: of a workbook that is all but done, each a reading that is lacking, save for those of panels
 *   whose turn at energization has not come
 */
export type OpenRows = "progress" | "gathered" | "missing";

/** From this share of rows recorded a workbook counts as done, so that a blank row is one that was forgotten. */
const DONE = 0.9;

interface Rows {
  readonly kind: RecordKind;
  readonly rows: readonly Row[];
  readonly aside: ReadonlySet<number>;
}

/**
 * The rows of tests of which nothing is recorded: neither in the row nor in another phase, pole or point of
 * the same test.
 */
export const openIn = ({ kind, rows, aside }: Rows): ReadonlySet<number> => {
  const entries = kind.columns.filter(({ role }) => role === "entry" || role === "note");
  const whole = keyIds(kind).filter((id) => WHOLE_TEST.has(id));
  const testOf = (row: Row) => whole.map((id) => String(row[id] ?? "")).join("\u0000");
  const isBegun = rows.map((row) => entries.some(({ id }) => !isBlank(row[id])));
  if (isBegun.every((begun) => begun)) return new Set();
  const begun = new Set(rows.flatMap((row, at) => (isBegun[at] ? testOf(row) : [])));
  return new Set(rows.flatMap((row, at) => (aside.has(at) || begun.has(testOf(row)) ? [] : at)));
};

/** The keys that the phases, poles and points of one test share. */
const WHOLE_TEST: ReadonlySet<string> = new Set(["object", "part", "stage"]);

/** What open rows of a workbook are, by how much of it is recorded. */
export const openRowsOf = (
  tables: readonly (Rows & { readonly open: ReadonlySet<number> })[],
  isFinal: boolean,
): OpenRows => {
  if (isFinal) return "gathered";
  const sum = (of: (table: (typeof tables)[number]) => number) =>
    tables.reduce((total, table) => total + of(table), 0);
  const all = sum(({ rows, aside }) => rows.length - aside.size);
  const open = sum((table) => table.open.size);
  return all > 0 && all - open >= DONE * all ? "missing" : "progress";
};

type WithOpen = Rows & { readonly open: ReadonlySet<number> };

/**
 * Open rows of the energization whose turn has not come: those of a panel of which their table holds nothing
 * yet, and readings under load, which come when there is load.
 */
const waitingIn = memoizeFor(({ kind, rows, open }: WithOpen): ReadonlySet<number> => {
  if (kind.step !== "energization" || open.size === 0) return new Set();
  const begun = new Set(rows.flatMap(({ object }, at) => (open.has(at) ? [] : [object])));
  const { stages } = kind;
  return new Set(
    [...open].filter((at) => {
      const row = rows[at] ?? {};
      return !begun.has(row.object ?? null) || (stages && stages.of(row) === stages.last);
    }),
  );
});

/** Whether a row is one of a test that was not begun and need not have been. */
export const isYetToCome = (table: WithOpen, row: number, openRows: OpenRows): boolean =>
  table.open.has(row) && (openRows !== "missing" || waitingIn(table).has(row));
