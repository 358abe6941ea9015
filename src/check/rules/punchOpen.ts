import type { FindingsText } from "../../messages/messages";
import { isBlank, type Row } from "../../records/kind";
import { cellAddress } from "../../sheets/address";
import { PUNCH_COLUMNS, PUNCH_STATES, punchTable } from "../../sheets/ours/punchSheet";
import { asRecordTable } from "../../sheets/recordTable";
import type { TableSnapshot } from "../../sheets/snapshot";
import { noKind, type Rule } from "../context";
import type { Finding } from "../finding";

export const PUNCH_OPEN = "punch-open";

const WEIGHTS = ["stop", "query", "note"] as const;

/** At hand-over, items that somebody put onto the punch list by hand and that are not closed. */
export const punchOpen: Rule = {
  id: PUNCH_OPEN,
  reads: "book",
  of: noKind,
  find: ({ openRows, snapshot, text }) => {
    const table = punchTable(snapshot);
    if (openRows !== "gathered" || !table) return [];
    return asRecordTable({ columns: PUNCH_COLUMNS }, table).rows.flatMap(
      (row, at) => openItem(row, table, at, text) ?? [],
    );
  },
};

/** What an item put there by hand still asks for. */
function openItem(
  row: Row,
  table: TableSnapshot,
  at: number,
  { rules }: FindingsText,
): Finding | undefined {
  if (!isBlank(row.rule) || isBlank(row.what)) return undefined;
  const state = stateIn(row);
  if (state !== undefined && !isBlank(row.note)) return undefined;
  const says = rules[PUNCH_OPEN];
  const id = state === undefined ? "state" : "note";
  const header = PUNCH_COLUMNS.find((column) => column.id === id)?.header ?? id;
  const what = String(row.what);
  return {
    rule: PUNCH_OPEN,
    weight: WEIGHTS.find((weight) => weight === row.weight) ?? "query",
    ...(isBlank(row.panel) ? {} : { panel: String(row.panel) }),
    sheet: table.sheet,
    address: cellAddress(table, at, Math.max(0, table.headers.indexOf(header))),
    row: what,
    column: header,
    message: state === undefined ? says.open(what) : says.noNote(what, state),
    found: String(row[id] ?? ""),
  };
}

/** The word by which an item is closed or accepted; undefined where it is open. */
const stateIn = ({ state }: Row): string | undefined =>
  [PUNCH_STATES.closed, PUNCH_STATES.accepted].find(
    (word) =>
      word.toLowerCase() ===
      String(state ?? "")
        .trim()
        .toLowerCase(),
  );
