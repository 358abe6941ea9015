import { evaluate } from "../../records/evaluate";
import { type Column, isBlank, type Row, rowKey } from "../../records/kind";
import { kindFor } from "../../records/kindFor";
import { KINDS } from "../../records/kinds";
import { BookError } from "../bookError";
import { type CellWrite, isSameStored } from "../cells/cell";
import { formulaIn, tableReference } from "../cells/formula";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../ours/concessionSheet";
import { HISTORY_COLUMNS, HISTORY_TABLE } from "../ours/historySheet";
import { INSTRUMENT_TABLE } from "../ours/instrumentSheet";
import { PUNCH_COLUMNS, PUNCH_TABLE } from "../ours/punchSheet";
import { REPAIR_COLUMNS, REPAIR_TABLE } from "../ours/repairSheet";
import { asRecordTable } from "../recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../snapshot";
import { freeSheetName } from "./freeSheetName";
import type { Plan } from "./plan";
import type { PlannedSheet } from "./plannedSheet";
import { type RenamedRows, renamedRows } from "./renamedRows";

/** What is to be done to one table that the workbook already has. */
export interface TableChange {
  readonly table: TableSnapshot;
  /** How many rows to add at its foot. */
  readonly added: number;
  /** Cells to write, those of added rows included. */
  readonly writes: readonly CellWrite[];
  /** Keys of rows that the lineup no longer needs; they stay, with their readings. */
  readonly aside: readonly string[];
  /** How many rows go by another name now, and keep their readings. */
  readonly renamed: number;
}

/** What building a plan onto a workbook comes to. */
export interface Reconciled {
  readonly create: readonly {
    readonly planned: PlannedSheet;
    readonly writes: readonly CellWrite[];
  }[];
  readonly change: readonly TableChange[];
}

const OURS = new Set(["given", "limit", "computed", "result"]);

/**
 * Compares a plan with what the workbook has. Rows are known by their key cells, and by the names that
 * their equipment had first where the lineup calls it otherwise now. Entries, notes, extra
 * columns and the order of rows stay as they are; rows that the workbook lacks come at the foot;
 * limits, givens and formulas are brought up to date; a computed cell that somebody typed over stays,
 * for the check to find. A record kind that the lineup needs no row of gets no sheet. A new sheet whose name
 * is that of somebody's own gets another one.
 *
 * @throws {BookError} where a table of our name has lost a column by which its rows are known
 * @param begun names of sheets that a build before this one began and did not finish
 */
export function reconcile(
  plan: Plan,
  snapshot?: Snapshot,
  begun: ReadonlySet<string> = new Set(),
): Reconciled {
  const tables = snapshot ? tablesOf(snapshot) : [];
  const taken = (snapshot?.sheets ?? []).flatMap(({ name }) => (begun.has(name) ? [] : name));
  const renames = renamedRows(snapshot?.lineup, plan);
  const create: Reconciled["create"][number][] = [];
  const change: TableChange[] = [];
  for (const planned of plan.sheets) {
    const table = tables.find((table) => belongs(planned, table));
    if (table) change.push(changeOf(plan, planned, table, renames(planned.table)));
    else if (planned.rows.length > 0 || !kindOf(planned)) {
      refuseNameTaken(planned, tables);
      create.push(creationOf(plan, { ...planned, sheet: freeSheetName(planned.sheet, taken) }));
    }
  }
  return { create, change: change.map((one) => withRowNames(one, plan, change, renames)) };
}

/** @throws {BookError} where a table has our name and not the columns that name our rows: two cannot have it */
function refuseNameTaken({ table, columns }: PlannedSheet, tables: readonly TableSnapshot[]): void {
  const other = tables.find(({ name }) => name.toLowerCase() === table.toLowerCase());
  if (!other) return;
  const lacking = columns.filter(
    ({ role, header }) => role === "key" && !other.headers.includes(header),
  );
  throw new BookError(({ book }) =>
    book.nameTaken(
      other.name,
      other.sheet,
      lacking.map(({ header }) => header),
    ),
  );
}

/** The tables whose rows name rows of others. */
const NAMING: ReadonlyMap<string, readonly Column[]> = new Map([
  [CONCESSION_TABLE, CONCESSION_COLUMNS],
  [HISTORY_TABLE, HISTORY_COLUMNS],
  [REPAIR_TABLE, REPAIR_COLUMNS],
  [PUNCH_TABLE, PUNCH_COLUMNS],
]);

/** Concessions, repairs, the punch list and the history name a row by its key: they follow it. */
function withRowNames(
  change: TableChange,
  plan: Plan,
  others: readonly TableChange[],
  renames: (table: string) => RenamedRows,
): TableChange {
  const columns = NAMING.get(change.table.name);
  const sheets = others.filter(({ renamed }) => renamed > 0);
  if (!columns || sheets.length === 0) return change;
  const { at, rows } = asRecordTable({ columns }, change.table);
  const column = at.get("row") ?? -1;
  const writes = rows.flatMap((row, index): CellWrite[] => {
    const table = sheets.find(({ table }) => table.sheet === row.sheet)?.table;
    const planned = plan.sheets.find((one) => table && belongs(one, table));
    const next = planned && renames(planned.table).get(String(row.row ?? ""));
    return next && column >= 0
      ? [{ row: index, column, value: rowKey(next, Object.keys(next)) }]
      : [];
  });
  return { ...change, writes: [...change.writes, ...writes] };
}

/** The sheet that lists the instruments of a workbook as it is built: ours may have another name. */
export const instrumentSheetIn = ({ create, change }: Reconciled): string | undefined =>
  change.find(({ table }) => table.name === INSTRUMENT_TABLE)?.table.sheet ??
  create.find(({ planned }) => planned.table === INSTRUMENT_TABLE)?.planned.sheet;

/** A sheet to be made. Its cells are worked out when they are asked for, and held by nobody: a long lineup has millions. */
const creationOf = (plan: Plan, planned: PlannedSheet): Reconciled["create"][number] => ({
  planned,
  get writes() {
    const at = new Map(planned.columns.map(({ id }, index) => [id, index]));
    const rows = evaluated(plan, planned, planned.rows);
    return writesOf(plan, planned, planned.table, rows, (id) => at.get(id) ?? -1);
  },
});

/** A table is the planned one when it has its key headers and either its name or all its other headers. */
export const belongs = (planned: PlannedSheet, table: TableSnapshot): boolean => {
  const has = (columns: readonly Column[]) =>
    columns.every(({ header, aside }) => aside === true || table.headers.includes(header));
  return (
    has(planned.columns.filter(({ role }) => role === "key")) &&
    (table.name === planned.table || has(planned.columns))
  );
};

const kindOf = (planned: PlannedSheet) => KINDS.find(({ table }) => table === planned.table);

const evaluated = (plan: Plan, planned: PlannedSheet, rows: readonly Row[]) => {
  const kind = kindOf(planned);
  return kind ? evaluate(kindFor(kind, plan.lineup), rows, plan.lineup) : rows;
};

function changeOf(
  plan: Plan,
  planned: PlannedSheet,
  table: TableSnapshot,
  renames: RenamedRows,
): TableChange {
  const { at, rows: found } = asRecordTable(planned, table);
  const keys = planned.columns.filter(({ role }) => role === "key").map(({ id }) => id);
  const wanted = new Map(planned.rows.map((row) => [rowKey(row, keys), row]));
  const { stored, names } = underNewNames(found, keys, renames);
  const storedKeys = stored.map((row) => rowKey(row, keys));
  const present = new Set(storedKeys);
  const added = planned.rows.filter((row) => !present.has(rowKey(row, keys)));
  const merged = [
    ...stored.map((row, index) => ({
      ...row,
      ...givens(planned, wanted.get(storedKeys[index] ?? "")),
    })),
    ...added,
  ];
  const after = evaluated(plan, planned, merged);
  const writes = writesOf(plan, planned, table.name, after, (id) => at.get(id) ?? -1);
  return {
    table,
    added: added.length,
    writes: writes.filter(
      ({ row, ...write }) =>
        row >= stored.length ||
        (names.has(row) && isKeyOf(planned, write.column, at)) ||
        differs(table, { row, ...write }, planned, at),
    ),
    aside: storedKeys.filter((key) => key && !wanted.has(key)),
    renamed: names.size,
  };
}

const isKeyOf = ({ columns }: PlannedSheet, column: number, at: ReadonlyMap<string, number>) =>
  columns.some(({ id, role }) => role === "key" && at.get(id) === column);

/**
 * Stored rows by the names that they have now, and which of them have another. Where the table has a row of
 * the new name already, which is not renamed itself, the old one stays as it is.
 */
function underNewNames(
  found: readonly Row[],
  keys: readonly string[],
  renames: RenamedRows,
): { stored: readonly Row[]; names: ReadonlySet<number> } {
  if (renames.size === 0) return { stored: found, names: new Set() };
  const staying = new Set(found.map((row) => rowKey(row, keys)).filter((key) => !renames.has(key)));
  const names = new Set<number>();
  const stored = found.map((row, index) => {
    const next = renames.get(rowKey(row, keys));
    if (!next || staying.has(rowKey(next, keys))) return row;
    names.add(index);
    return { ...row, ...next };
  });
  return { stored, names };
}

/** The cells of a planned row that are the lineup's to give. */
const givens = (planned: PlannedSheet, row: Row | undefined): Row =>
  row
    ? Object.fromEntries(
        planned.columns
          .filter(({ role, id }) => role === "given" && id in row)
          .map(({ id }) => [id, row[id] ?? null]),
      )
    : {};

/** Every cell that a table's own columns hold, row by row. */
function writesOf(
  plan: Plan,
  planned: PlannedSheet,
  table: string,
  rows: readonly Row[],
  position: (id: string) => number,
): CellWrite[] {
  const ref = tableReference(table, planned.columns);
  const columns = planned.columns.flatMap((column) => {
    const at = position(column.id);
    return at < 0 ? [] : [{ id: column.id, at, formula: formulaIn(column, ref, plan.lineup) }];
  });
  const writes: CellWrite[] = [];
  for (const [index, row] of rows.entries())
    for (const { id, at, formula } of columns)
      writes.push({ row: index, column: at, value: row[id] ?? null, formula: formula(row) });
  return writes;
}

/** Whether a cell of ours holds something else than it should. Entries are never ours to write. */
function differs(
  table: TableSnapshot,
  { row, column, value, formula }: CellWrite,
  planned: PlannedSheet,
  at: ReadonlyMap<string, number>,
): boolean {
  const owner = planned.columns.find(({ id }) => at.get(id) === column);
  if (!owner || !OURS.has(owner.role)) return false;
  const stored = table.formula(row, column);
  const typedOver =
    stored === undefined &&
    owner.role !== "given" &&
    owner.role !== "limit" &&
    formula !== undefined &&
    !isBlank(table.cell(row, column));
  if (typedOver) return false;
  return stored !== formula || !isSameStored(table.cell(row, column), value);
}
