import { groupBy } from "../../quantities/groupedBy";
import { type CellValue, type Column, isBlank, type Row } from "../../records/kind";
import { historyOf, historySheet } from "../../sheets/ours/historySheet";
import type { Report } from "../check";
import { type Context, type JudgedTable, where, whereTable } from "../context";
import type { Finding } from "../findings/finding";
import { isSameResult } from "./isSameResult";

/** A finding that says something else than it did. */
export interface ChangedFinding {
  readonly before: Finding;
  readonly after: Finding;
}

/** A reading, or anything else typed, that is not what it was in the earlier workbook. */
export interface AlteredEntry {
  readonly record: string;
  readonly sheet: string;
  /** A1 address in the newer workbook. */
  readonly address: string;
  readonly row: string;
  readonly column: string;
  readonly before: CellValue;
  readonly after: CellValue;
  /** Rows that were altered alike, where more than one were. */
  readonly rows?: number;
}

/** What became of a workbook's findings and readings since an earlier revision of it. */
export interface Compared {
  /** Findings of the earlier workbook that are gone, or were conceded since. */
  readonly closed: readonly Finding[];
  readonly fresh: readonly Finding[];
  readonly changed: readonly ChangedFinding[];
  /** Findings that say what they said. */
  readonly same: number;
  /**
   * Entries that were there and are others now, or are gone; what was blank and is filled is no alteration.
   * Limits and ratings that are others, each change once; panels of which rows with entries are gone;
   * and entries of the reading history that are gone.
   */
  readonly altered: readonly AlteredEntry[];
}

/**
 * Compares the check of a workbook with that of an earlier revision. Rows are known by their keys and
 * columns by their headers, never by address, so that sorting and added rows change nothing.
 */
export function compareReports(before: Report, after: Report): Compared {
  const open = new Map<string, Finding[]>();
  for (const finding of before.findings) {
    const name = nameOf(finding);
    const list = open.get(name);
    if (list) list.push(finding);
    else open.set(name, [finding]);
  }
  const fresh: Finding[] = [];
  const changed: ChangedFinding[] = [];
  const closed: Finding[] = [];
  let same = 0;
  for (const finding of after.findings) {
    const was = open.get(nameOf(finding))?.shift();
    if (!was) fresh.push(finding);
    else if (finding.concession && !was.concession) closed.push(finding);
    else if (saysOf(was) === saysOf(finding)) same++;
    else changed.push({ before: was, after: finding });
  }
  return {
    closed: [...[...open.values()].flat(), ...closed],
    fresh,
    changed,
    same,
    altered: alteredIn(before.context, after.context),
  };
}

/** What a finding is about. */
const nameOf = ({ rule, record, sheet, row, column, found }: Finding) =>
  [rule, record ?? sheet, row, row === undefined && record === undefined ? found : column].join(
    "\u0000",
  );

/** What a finding says of it. */
const saysOf = ({ weight, found, expected, concession }: Finding) =>
  JSON.stringify([weight, found, expected, concession]);

/** What of the records themselves is another than before. */
const alteredIn = (before: Context, after: Context): AlteredEntry[] => [
  ...after.tables.flatMap((table) => {
    const was = before.tables.filter(({ kind }) => kind.id === table.kind.id);
    return [...alteredOf(was, table), ...rewrittenOf(was, table)];
  }),
  ...before.tables.flatMap((table) => goneOf(table, after)),
  ...historyGone(before, after),
];

/** Columns of a table, by what they are for. */
const columnsOf = ({ kind, at }: JudgedTable, ...roles: readonly Column["role"][]): Column[] =>
  kind.columns.filter(({ id, role }) => roles.includes(role) && at.has(id));

/** Cells of some columns that were filled and are others now: as they were entered, or as they were worked out. */
function others(
  earlier: readonly JudgedTable[],
  table: JudgedTable,
  columns: readonly Column[],
  cells: "rows" | "judged",
): AlteredEntry[] {
  const known = new Map(
    earlier.flatMap((one) => one.keys.map((key, index) => [key, one[cells][index]] as const)),
  );
  return table[cells].flatMap((row, index) => {
    const was = known.get(table.keys[index] ?? "");
    if (!was) return [];
    return columns
      .filter(({ id }) => id in was && !isBlank(was[id]) && !isSameResult(was[id], row[id]))
      .map(({ id, header }): AlteredEntry => {
        const { sheet, address } = where(table, index, id);
        return {
          record: table.kind.id,
          sheet,
          address,
          row: table.keys[index] ?? "",
          column: header,
          before: was[id] ?? null,
          after: row[id] ?? null,
        };
      });
  });
}

const alteredOf = (earlier: readonly JudgedTable[], table: JudgedTable): AlteredEntry[] =>
  others(earlier, table, columnsOf(table, "entry"), "rows");

/** Limits and ratings that a lineup was rewritten to, each change once: the rows agree with the new lineup, not with the old. */
const rewrittenOf = (earlier: readonly JudgedTable[], table: JudgedTable): AlteredEntry[] => {
  const follows = columnsOf(table, "given", "limit").filter(({ id }) => id !== "sources");
  return groupBy(others(earlier, table, follows, "judged"), ({ column, before, after }) =>
    JSON.stringify([column, before, after]),
  ).map(together);
};

/** The first of some alterations that are alike, with how many there are. */
const together = (alike: readonly AlteredEntry[]): AlteredEntry => ({
  ...(alike[0] as AlteredEntry),
  ...(alike.length > 1 ? { rows: alike.length } : {}),
});

/** The panels of which rows with entries are no longer there. */
function goneOf(table: JudgedTable, after: Context): AlteredEntry[] {
  const now = after.tables.filter(({ kind }) => kind.id === table.kind.id);
  const kept = new Set(now.flatMap(({ keys }) => keys));
  const entries = columnsOf(table, "entry");
  const [first] = columnsOf(table, "key");
  const gone = table.rows.flatMap((row, index): AlteredEntry[] =>
    kept.has(table.keys[index] ?? "") || !first || entries.every(({ id }) => isBlank(row[id]))
      ? []
      : [
          {
            record: table.kind.id,
            ...placeOf(now[0] ?? table),
            row: String(row[first.id] ?? ""),
            column: first.header,
            before: row[first.id] ?? null,
            after: null,
          },
        ],
  );
  return groupBy(gone, ({ row }) => row).map(together);
}

const placeOf = (table: JudgedTable) => {
  const { sheet, address } = whereTable(table);
  return { sheet, address };
};

/** What the reading history held and holds no more. */
function historyGone(before: Context, after: Context): AlteredEntry[] {
  const nameOf = (row: Row) => JSON.stringify(Object.values(row));
  const kept = new Set(historyOf(after.snapshot).map(nameOf));
  const { sheet } = historySheet();
  return historyOf(before.snapshot)
    .filter((row) => !kept.has(nameOf(row)))
    .map(({ row, column, value }) => ({
      record: "history",
      sheet,
      address: "A1",
      row: String(row ?? ""),
      column: String(column ?? ""),
      before: value ?? null,
      after: null,
    }));
}
