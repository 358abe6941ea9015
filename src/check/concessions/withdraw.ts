import { daySerial } from "../../quantities/dates";
import { isBlank } from "../../records/kind";
import type { CellWrite } from "../../sheets/cells/cell";
import { CONCESSION_COLUMNS } from "../../sheets/ours/concessionSheet";
import { asRecordTable } from "../../sheets/recordTable";
import type { TableSnapshot } from "../../sheets/snapshot";
import type { Finding } from "../findings/finding";
import { concede } from "./concede";

const sameCell = (one: unknown, other: unknown) => String(one ?? "") === String(other ?? "");

/**
 * The cells to blank so that a finding's acceptance is withdrawn: those of its row in the table of
 * concessions. None where the finding is not accepted, or its row is not found.
 *
 * @example withdraw(finding, table).length // 8, or 0
 */
export function withdraw(finding: Finding, table: TableSnapshot): CellWrite[] {
  if (!finding.concession) return [];
  const { at, rows } = asRecordTable({ columns: CONCESSION_COLUMNS }, table);
  const granted = concede(finding, finding.concession);
  const row = rows.findLastIndex((stored) =>
    CONCESSION_COLUMNS.every(({ id }) =>
      id === "date"
        ? sameCell(dayIn(stored.date), granted.date)
        : sameCell(stored[id], granted[id]),
    ),
  );
  return row < 0
    ? []
    : [...at].flatMap(([id, column]) =>
        isBlank(rows[row]?.[id]) ? [] : [{ row, column, value: null }],
      );
}

const dayIn = (cell: unknown) => (typeof cell === "string" ? daySerial(cell) : cell);
