import { serialDay } from "../../quantities/dates";
import { groupBy } from "../../quantities/groupedBy";
import { type CellValue, type Column, isBlank } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { isSameStored } from "../../sheets/cells/cell";
import { placedOn } from "../../sheets/kept/placedReadings";
import { HISTORY_COLUMNS, HISTORY_TABLE } from "../../sheets/ours/historySheet";
import { asRecordTable } from "../../sheets/recordTable";
import { type Snapshot, tablesOf } from "../../sheets/snapshot";
import { digits } from "../among/chance";
import { decimals } from "../among/similar";
import { headerOf, type JudgedTable, overRows, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";
import { together } from "../findings/gatherFindings";
import { oncePerEntry } from "../findings/oncePerEntry";

/** A reading or condition that an export gave and that was changed by hand since, of which the history knows nothing. */
export const changedSinceIntake: Rule = {
  id: "changed-since-intake",
  reads: "table",
  find: (table, { book, snapshot, text }) => {
    const says = text.rules["changed-since-intake"];
    const { placed } = book.remembered;
    if (!placed || table.table.ownLayout) return [];
    const isLogged = loggedIn(snapshot, table);
    const entries = new Map(table.kind.columns.map((column) => [column.id, column]));
    const changes = overRows(table, (row, stored): Finding[] => {
      const given = placedOn(placed, table, stored);
      if (!given) return [];
      return Object.entries(given).flatMap(([id, value]): Finding[] => {
        const column = entries.get(id);
        const now = stored[id] ?? null;
        if (!column || isLogged(row, id, value) || isExplained(table, column, now, value))
          return [];
        return [
          {
            rule: "changed-since-intake",
            weight: isRounded(now, value) ? "note" : "query",
            ...where(table, row, id),
            message: says.message(
              rowName(table, row),
              headerOf(table, id),
              shown(column, now),
              shown(column, value),
              String(stored.origin ?? ""),
              snapshot.savedBy,
            ),
            found: said(now),
            expected: said(value),
          },
        ];
      });
    }).map(({ finding }) => finding);
    // One change made to several rows is one question, and so is what was changed of one panel.
    const ofRows = groupBy(changes, ({ column, expected }) => `${column}\u0000${expected}`).flatMap(
      (some) => oncePerEntry(some, text),
    );
    const [several, single] = [true, false].map((isSeveral) =>
      ofRows.filter(({ further }) => (further !== undefined) === isSeveral),
    );
    return [
      ...(several ?? []),
      ...groupBy(single ?? [], ({ panel, weight }) => `${panel}\u0000${weight}`).flatMap((some) =>
        together(some, text, text.furtherCells),
      ),
    ];
  },
};

/** What is no question of this rule: a reading that is gone, which is missing; the same otherwise written; a permit's renewal. */
const isExplained = ({ kind }: JudgedTable, column: Column, now: CellValue, was: CellValue) =>
  isBlank(was) ||
  (isBlank(now) && column.need !== undefined) ||
  isSame(column, now, was) ||
  (kind.role === "permit" && isRenewed(column.id, now, was));

/** A permit is renewed or handed on as a matter of course; one that holds for fewer days than it did is a question. */
const isRenewed = (id: string, now: CellValue, was: CellValue): boolean => {
  if (typeof now !== "number" || typeof was !== "number") return id === "by";
  return id === "date" || (id === "to" && now > was) || (id === "from" && now < was);
};

const isDay = ({ accepts }: Column, cell: CellValue): cell is number =>
  accepts?.type === "date" && typeof cell === "number";

const shown = (column: Column, cell: CellValue): string =>
  isDay(column, cell) ? serialDay(cell) : said(cell);

/** A reading written with fewer digits, at least two, and otherwise as it came. */
const isRounded = (now: CellValue, value: CellValue): boolean =>
  typeof now === "number" &&
  typeof value === "number" &&
  digits(now) >= 2 &&
  digits(now) < digits(value) &&
  Math.abs(now - value) <= 0.5 * 10 ** -decimals(now) * (1 + 1e-9);

/** The same cell, the same day with or without its hour, or the same quantity written otherwise. */
const isSame = (column: Column, now: CellValue, value: CellValue): boolean => {
  const { unit } = column;
  if (isSameStored(now, value)) return true;
  if (isDay(column, now) && isDay(column, value)) return Math.floor(now) === Math.floor(value);
  const [one, other] = unit ? [exactly(now, unit), exactly(value, unit)] : [];
  return one !== undefined && other !== undefined
    ? Math.abs(one - other) <= 1e-9 * Math.abs(other)
    : String(now ?? "")
        .trim()
        .toLowerCase() ===
        String(value ?? "")
          .trim()
          .toLowerCase();
};

/** Whether the history tells of a cell of a table that it held a value. */
function loggedIn(
  snapshot: Snapshot,
  table: JudgedTable,
): (row: number, id: string, value: CellValue) => boolean {
  const history = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  const cells = new Set(
    history
      ? asRecordTable({ columns: HISTORY_COLUMNS }, history).rows.map(
          ({ sheet, row, column, value }) => placeOf(sheet, row, column, value),
        )
      : [],
  );
  return (row, id, value) =>
    cells.has(placeOf(table.kind.sheet, rowName(table, row), headerOf(table, id), value));
}

const placeOf = (...cells: (CellValue | undefined)[]) => JSON.stringify(cells);
