import { type CellValue, isBlank } from "../records/kind";
import type { Report } from "./check";
import { type JudgedTable, where } from "./context";
import type { Finding } from "./finding";
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
}

/** What became of a workbook's findings and readings since an earlier revision of it. */
export interface Compared {
  /** Findings of the earlier workbook that are gone, or were conceded since. */
  readonly closed: readonly Finding[];
  readonly fresh: readonly Finding[];
  readonly changed: readonly ChangedFinding[];
  /** Findings that say what they said. */
  readonly same: number;
  /** Entries that were there and are others now, or are gone; what was blank and is filled is no alteration. */
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
    altered: after.context.tables.flatMap((table) => {
      const was = before.context.tables.filter(({ kind }) => kind.id === table.kind.id);
      return alteredOf(was, table);
    }),
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

/** Entries of a table that are others than in the earlier tables of its kind. */
function alteredOf(earlier: readonly JudgedTable[], table: JudgedTable): AlteredEntry[] {
  const rows = new Map(
    earlier.flatMap(({ keys, rows }) => keys.map((key, index) => [key, rows[index]] as const)),
  );
  const entries = table.kind.columns.filter(({ id, role }) => role === "entry" && table.at.has(id));
  return table.rows.flatMap((row, index) => {
    const was = rows.get(table.keys[index] ?? "");
    if (!was) return [];
    return entries
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
