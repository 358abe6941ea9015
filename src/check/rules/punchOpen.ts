import { bare } from "../../lineup/lineup";
import type { FindingsText } from "../../messages/messages";
import { isBlank, keyIds, type Row } from "../../records/kind";
import { cellAddress } from "../../sheets/cells/address";
import { PUNCH_COLUMNS, PUNCH_STATES, punchTable } from "../../sheets/ours/punchSheet";
import { asRecordTable } from "../../sheets/recordTable";
import type { TableSnapshot } from "../../sheets/snapshot";
import { amongVerdicts } from "../among/amongRows";
import { concededIn } from "../concessions/concessions";
import { type Context, everyKind, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

export const PUNCH_OPEN = "punch-open";

const WEIGHTS = ["stop", "query", "note"] as const;

/** At hand-over, items that somebody put onto the punch list by hand and that are not closed. */
export const punchOpen: Rule = {
  id: PUNCH_OPEN,
  reads: "book",
  of: everyKind,
  find: (context) => {
    const { openRows, snapshot, text } = context;
    const table = punchTable(snapshot);
    if (!table) return [];
    return asRecordTable({ columns: PUNCH_COLUMNS }, table).rows.flatMap(
      (row, at) =>
        stillFails(row, table, at, context) ??
        (openRows === "gathered" ? openItem(row, table, at, text) : undefined) ??
        [],
    );
  },
};

/** A closed item of which the record that it names or is linked to fails as it did. */
function stillFails(
  item: Row,
  table: TableSnapshot,
  at: number,
  context: Context,
): Finding | undefined {
  if (isBlank(item.what) || stateIn(item) !== PUNCH_STATES.closed) return undefined;
  const failing = isBlank(item.rule) ? failingRow(item, context) : linkedRow(item, context);
  if (!failing) return undefined;
  return {
    ...atItem(item, table, at, "state"),
    message: context.text.rules[PUNCH_OPEN].stillFails(
      String(item.what),
      failing.name,
      failing.place,
    ),
    found: String(item.state),
  };
}

/** The record of an item's panel that the item names by all of its other keys, and that fails. */
function failingRow({ panel, what }: Row, { tables }: Context) {
  const words = ` ${String(what).toLowerCase().split(WORDS).join(" ")} `;
  for (const table of tables) {
    const others = keyIds(table.kind).filter((id) => id !== "object");
    for (const row of amongVerdicts(table, "Fail")) {
      const stored = table.rows[row] ?? {};
      const isNamed = others.every((id) =>
        words.includes(
          ` ${String(stored[id] ?? "")
            .toLowerCase()
            .split(WORDS)
            .join(" ")} `,
        ),
      );
      if (others.length === 0 || !isNamed || !sameName(stored.object, panel)) continue;
      const { sheet, address } = where(table, row, "result");
      return { name: rowName(table, row), place: `${sheet}, ${address}` };
    }
  }
  return undefined;
}

/** The record that an item is linked to as one out of its limits, where it still fails and nobody accepted it. */
function linkedRow({ rule, sheet, row: name }: Row, context: Context) {
  if (rule !== "out-of-limits" || isBlank(name)) return undefined;
  const isConceded = concededIn(context);
  for (const table of context.tables)
    if (table.table.sheet === sheet)
      for (const row of amongVerdicts(table, "Fail"))
        if (rowName(table, row) === String(name).trim() && !isConceded(table, row))
          return {
            name: rowName(table, row),
            place: `${sheet}, ${where(table, row, "result").address}`,
          };
  return undefined;
}

const WORDS = /[^\p{L}\p{N}]+/u;
const sameName = (one: Row[string] | undefined, other: Row[string] | undefined): boolean =>
  bare(String(one ?? "")) === bare(String(other ?? ""));

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
  const what = String(row.what);
  return {
    ...atItem(row, table, at, id),
    message: state === undefined ? says.open(what) : says.noNote(what, state),
    found: String(row[id] ?? ""),
  };
}

/** Where a finding of an item stands, and what it weighs. */
function atItem(item: Row, table: TableSnapshot, at: number, id: string) {
  const header = PUNCH_COLUMNS.find((column) => column.id === id)?.header ?? id;
  return {
    rule: PUNCH_OPEN,
    weight: WEIGHTS.find((weight) => weight === item.weight) ?? "query",
    ...(isBlank(item.panel) ? {} : { panel: String(item.panel) }),
    sheet: table.sheet,
    address: cellAddress(table, at, Math.max(0, table.headers.indexOf(header))),
    row: String(item.what),
    column: header,
  } as const;
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
