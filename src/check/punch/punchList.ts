import type { FindingsText } from "../../messages/messages";
import { daySerial } from "../../quantities/dates";
import { type CellValue, isBlank, type Row } from "../../records/kind";
import { PUNCH_CHECK, PUNCH_COLUMNS, PUNCH_STATES, punchTable } from "../../sheets/ours/punchSheet";
import { asRecordTable } from "../../sheets/recordTable";
import type { Report } from "../check";
import type { Finding } from "../findings/finding";
import { listOdd } from "../rules/listOdd";
import { PUNCH_OPEN } from "../rules/punchOpen";

/** An item of the punch list. */
export interface PunchItem {
  /** Its row in the workbook's list, from 0; undefined where it is new. */
  readonly from?: number;
  /** By column id. */
  readonly cells: Row;
}

const { open, closed, accepted } = PUNCH_STATES;
const { found, gone } = PUNCH_CHECK;

/**
 * The punch list as it is to stand: what the workbook's list holds, with what the check found. What people
 * typed stays; an item whose finding is gone is closed, not taken off, and opened where it is found again;
 * an accepted finding stays as accepted. Open items come first, the heaviest before the others, by panel.
 *
 * @example punchList(report).map(({ cells }) => cells.what)
 */
export function punchList(report: Report): PunchItem[] {
  const { context, findings } = report;
  const table = punchTable(context.snapshot);
  const stored = table
    ? asRecordTable({ columns: PUNCH_COLUMNS }, table).rows.flatMap((cells, from) =>
        PUNCH_COLUMNS.some(({ id }) => !isBlank(cells[id])) ? [{ from, cells }] : [],
      )
    : [];
  const wanted = new Map(
    numbered(findings.filter(isWork)).map(({ name, item }) => [name, item] as const),
  );
  const known = numbered(
    stored.map((item) => item.cells),
    ({ rule }) => !isBlank(rule),
  );
  const names = new Map(known.map(({ name, item }) => [item, name]));
  const kept = stored.map(({ from, cells }): PunchItem => {
    const name = names.get(cells);
    return name === undefined
      ? { from, cells }
      : { from, cells: updated(cells, wanted.get(name), report) };
  });
  const there = new Set(names.values());
  const fresh = [...wanted].flatMap(([name, finding]) =>
    there.has(name) ? [] : [{ cells: newItem(finding, report) }],
  );
  return withNumbers([...kept, ...fresh]).sort(inOrderOf(context.lineup));
}

/** Rules that tell of the punch list itself, or of the reading history: a slip is put right where it stands, and is nothing of the plant's. */
const OF_LISTS: ReadonlySet<string> = new Set([PUNCH_OPEN, listOdd.id]);

/** What is to be closed out: notes of the check are no work. */
const isWork = ({ rule, weight }: Finding): boolean => weight !== "note" && !OF_LISTS.has(rule);

type Named = { readonly [key in "rule" | "sheet" | "row" | "column" | "address"]?: CellValue };

/** What an item and its finding agree in, whatever value is found; several of one place are told apart by their order. */
function numbered<T extends Named>(
  items: readonly T[],
  isNamed: (item: T) => boolean = () => true,
): { readonly name: string; readonly item: T }[] {
  const seen = new Map<string, number>();
  return items.filter(isNamed).map((item) => {
    const { rule, sheet, row, column, address } = item;
    // Without a row, a finding is of a table or of a line that nothing names.
    const place = [rule, sheet, isBlank(row) ? address : row, column];
    const name = place.map((cell) => String(cell ?? "").trim()).join("\u0000");
    const at = seen.get(name) ?? 0;
    seen.set(name, at + 1);
    return { name: `${name}\u0000${at}`, item };
  });
}

const stateOf = (cell: CellValue | undefined): string => String(cell ?? "").trim();

/** An item of before, by what is found of it now. */
function updated(cells: Row, finding: Finding | undefined, { context }: Report): Row {
  const state = stateOf(cells.state);
  if (!finding) {
    // What nobody has begun is a finding of the check for hand-over alone.
    if (cells.rule === "still-open" && context.openRows !== "gathered") return cells;
    return state === closed
      ? { ...cells, check: gone }
      : { ...cells, state: closed, check: gone, closed: context.today };
  }
  const told = { ...cells, ...saidOf(finding, context.text) };
  if (finding.concession) return { ...told, state: accepted };
  const isBack = state === accepted || (state === closed && cells.check === gone);
  return isBack || state === "" ? { ...told, state: open, closed: null } : told;
}

/** What an item takes from its finding. */
const saidOf = (
  { weight, panel, message, rule, sheet, address, row, column, concession }: Finding,
  { sheet: says }: FindingsText,
): Row => ({
  weight,
  panel: panel ?? null,
  what: message,
  accepted: concession
    ? says.concession(concession.reason, concession.name, concession.date)
    : null,
  check: found,
  ...{ rule, sheet, address, row: row ?? null, column: column ?? null },
});

const newItem = (finding: Finding, { context }: Report): Row => ({
  ...saidOf(finding, context.text),
  state: finding.concession ? accepted : open,
  raised: context.today,
  closed: finding.concession ? daySerial(finding.concession.date) : null,
});

/** Items with the numbers that they lack, each the next after the highest. */
function withNumbers(items: readonly PunchItem[]): PunchItem[] {
  let last = items.reduce((most, { cells }) => Math.max(most, Number(cells.number) || 0), 0);
  return items.map((item) => {
    if (!isBlank(item.cells.number)) return item;
    last += 1;
    return { ...item, cells: { ...item.cells, number: last } };
  });
}

const WEIGHTS: readonly CellValue[] = ["stop", "query", "note"];
const STATES: readonly string[] = [open, accepted, closed];

/** Open before accepted before closed, stops before queries, panels as they stand; else as the list had them. */
const inOrderOf = ({ panels }: Report["context"]["lineup"]) => {
  const places = new Map<CellValue, number>(
    panels.flatMap(({ designation }, at) => [[designation, at] as const]),
  );
  const known = (at: number, length: number) => (at < 0 ? length : at);
  const ranks = ({ cells: { state, weight, panel, number } }: PunchItem): number[] => [
    // A state of somebody's own is not closed yet.
    Math.max(0, STATES.indexOf(stateOf(state))),
    known(WEIGHTS.indexOf(weight ?? null), WEIGHTS.length),
    places.get(panel ?? null) ?? -1,
    Number(number) || 0,
  ];
  return (one: PunchItem, other: PunchItem): number => {
    const others = ranks(other);
    return ranks(one)
      .map((rank, at) => rank - (others[at] ?? 0))
      .reduce((first, next) => first || next, 0);
  };
};
