import { sameName } from "../../lineup/lineup";
import type { FindingsText } from "../../messages/messages";
import { serialDay } from "../../quantities/dates";
import { LINEUP } from "../../records/columns/common";
import { type Column, isBlank, type Row } from "../../records/kind";
import { cellAddress } from "../../sheets/cells/address";
import { HISTORY_COLUMNS, HISTORY_TABLE } from "../../sheets/ours/historySheet";
import { PUNCH_COLUMNS, PUNCH_STATES, PUNCH_TABLE } from "../../sheets/ours/punchSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { tablesOf } from "../../sheets/snapshot";
import { type Context, dayOf, noKind, type Rule } from "../context";
import type { Finding } from "../findings/finding";
import { panelsOf } from "../panelsOf";

type Says = FindingsText["rules"]["list-odd"];
type Odd = { readonly id: string; readonly message: string };

/** An item of the punch list, or an entry of the reading history, whose days, state or names cannot be. */
export const listOdd: Rule = {
  id: "list-odd",
  reads: "book",
  of: noKind,
  find: (context) => [
    ...oddIn(PUNCH_TABLE, PUNCH_COLUMNS, "what", oddItem, context),
    ...oddIn(HISTORY_TABLE, HISTORY_COLUMNS, "row", oddEntry, context),
  ],
};

function oddIn(
  name: string,
  columns: readonly Column[],
  named: string,
  oddOf: (row: Row, context: Context) => Odd | undefined,
  context: Context,
): Finding[] {
  const table = tablesOf(context.snapshot).find((one) => one.name === name);
  if (!table) return [];
  const { at, rows } = asRecordTable({ columns }, table);
  return rows.flatMap((row, index): Finding[] => {
    const odd = isBlank(row[named]) ? undefined : oddOf(row, context);
    return odd
      ? [
          {
            rule: "list-odd",
            weight: "query",
            sheet: table.sheet,
            address: cellAddress(table, index, Math.max(0, at.get(odd.id) ?? 0)),
            row: String(row[named]),
            column: columns.find(({ id }) => id === odd.id)?.header,
            message: odd.message,
            found: String(row[odd.id] ?? ""),
          },
        ]
      : [];
  });
}

/** Two days of one thing: the second on the first's day or later, and neither to come. */
function oddDays(
  row: Row,
  [first, then]: readonly [string, string],
  columns: readonly Column[],
  { today, text }: Context,
): Odd | undefined {
  const says = text.rules["list-odd"];
  const header = (id: string) => columns.find((column) => column.id === id)?.header ?? id;
  for (const id of [first, then]) {
    const day = dayOf(row[id]);
    if (day !== undefined && day >= today + 1)
      return { id, message: says.future(header(id), serialDay(day)) };
  }
  const [one, other] = [dayOf(row[first]), dayOf(row[then])];
  return one !== undefined && other !== undefined && Math.floor(other) < Math.floor(one)
    ? {
        id: then,
        message: says.before(header(then), serialDay(other), header(first), serialDay(one)),
      }
    : undefined;
}

const oddEntry = (row: Row, context: Context): Odd | undefined =>
  oddDays(row, ["date", "replacedOn"], HISTORY_COLUMNS, context);

const oddItem = (row: Row, context: Context): Odd | undefined =>
  oddDays(row, ["raised", "closed"], PUNCH_COLUMNS, context) ??
  oddPanel(row, context) ??
  (isBlank(row.rule) ? oddState(row, context) : undefined);

/** An item that somebody put there by hand: the check sees to those of its own. */
function oddState(row: Row, { openRows, text }: Context): Odd | undefined {
  // A new item without a state is open, and is written so when the list is brought up to date.
  if (isBlank(row.state)) return undefined;
  const says: Says = text.rules["list-odd"];
  const state = Object.values(PUNCH_STATES).find((word) => sameName(word, String(row.state ?? "")));
  if (state === undefined)
    return { id: "state", message: says.noState(Object.values(PUNCH_STATES)) };
  if (state === PUNCH_STATES.open) return undefined;
  // At hand-over another rule asks for the note.
  if (isBlank(row.note) && openRows !== "gathered")
    return { id: "note", message: says.noNote(state) };
  if (state === PUNCH_STATES.closed && isBlank(row.closed))
    return { id: "closed", message: says.noDay };
  const by = `${row.accepted ?? ""} ${row.note ?? ""}`.toLowerCase();
  const owner = String(row.owner ?? "").trim();
  return state === PUNCH_STATES.accepted && owner !== "" && by.includes(owner.toLowerCase())
    ? { id: "owner", message: says.byOwner(owner) }
    : undefined;
}

/** What an item says that is of no single panel. */
const GENERAL = /^(?:all|general|lineup|switchgear|switchboard|site|room|-|n\/?a)\b|^-$/i;

function oddPanel({ panel }: Row, { lineup, text }: Context): Odd | undefined {
  const names = String(panel ?? "")
    .split(/[;,/&]|\band\b/)
    .map((name) => name.trim())
    .filter((name) => name !== "" && name !== LINEUP && !GENERAL.test(name));
  const unknown = names.find((name) => panelsOf(lineup, name).length === 0);
  return unknown === undefined
    ? undefined
    : { id: "panel", message: text.rules["list-odd"].noPanel(unknown) };
}
