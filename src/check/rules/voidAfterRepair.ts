import { bare } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { groupedBy } from "../../quantities/groupedBy";
import { type Row, type VoidBy, verdictOf } from "../../records/kind";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";
import { oncePerEntry } from "../findings/oncePerEntry";
import { knownRepairs, type Repair, sectionsOf } from "../repairs";

const RULE = "void-after-repair";

/** A repair with the names of panels and sections that it reaches. */
interface Reaching extends Repair {
  readonly objects: Readonly<Record<VoidBy["reach"], ReadonlySet<string>>>;
}

/** A record that a repair made void, or that was not tested again after its own. */
export const voidAfterRepair: Rule = {
  id: RULE,
  reads: "book",
  of: everyKind,
  find: (context) => {
    const repairs = knownRepairs(context)
      .map((repair) => reaching(repair, context))
      // Of several repairs that reach a record the last is told.
      .sort((one, other) => other.day - one.day);
    return repairs.length === 0
      ? []
      : context.tables.flatMap((table) => inTable(table, repairs, context));
  },
};

const reaching = (repair: Repair, { lineup }: Context): Reaching => ({
  ...repair,
  objects: {
    panel: new Set([bare(repair.object), bare(repair.row.split(" · ")[0] ?? "")]),
    section: new Set(sectionsOf(lineup, repair.object).map(bare)),
  },
});

function inTable(table: JudgedTable, repairs: readonly Reaching[], context: Context): Finding[] {
  const found = table.judged.flatMap((row, at): Finding[] => {
    const one = table.aside.has(at) ? undefined : ofRow(table, at, row, repairs, context);
    return one ? [one] : [];
  });
  // What a repair asks of the rows of a table is one question, and what it makes void one thing to do.
  const own = new Set(
    repairs.filter(({ sheet }) => sheet === table.table.sheet).map(({ row }) => row),
  );
  // It is told at the repaired record itself, where that is among them.
  const isOwn = ({ row }: Finding) => row !== undefined && own.has(row);
  const ordered = [...found.filter(isOwn), ...found.filter((one) => !isOwn(one))];
  return [...groupedBy(ordered, ({ weight }) => weight).values()].flatMap((some) =>
    oncePerEntry(some, context.text),
  );
}

function ofRow(
  table: JudgedTable,
  at: number,
  row: Row,
  repairs: readonly Reaching[],
  { text }: Context,
): Finding | undefined {
  const says = text.rules[RULE];
  const verdict = verdictOf(row);
  if (verdict === "Fail" || verdict === "Not required") return undefined;
  const name = rowName(table, at);
  const own = repairs.find((one) => one.sheet === table.table.sheet && one.row === name);
  if (verdict === "Missing")
    return own && table.open.has(at)
      ? finding(table, at, "stop", says.outstanding(name, serialDay(own.day)), verdict)
      : undefined;
  const day = dayOf(row.date);
  if (day === undefined) return undefined;
  const tested = serialDay(day);
  if (own && day < own.day)
    return finding(table, at, "stop", says.notAgain(name, tested, serialDay(own.day)), tested);
  const hits = repairs.flatMap((repair) => {
    const by = table.kind.voidBy?.[repair.work];
    return by && day < repair.day && isReached(row, repair, by) ? [{ repair, by }] : [];
  });
  const hit = hits.find(({ by }) => !by.asks) ?? hits[0];
  if (!hit) return undefined;
  const { repair, by } = hit;
  const say = by.asks ? says.asks : says.stands;
  const message = say(name, tested, repair.work, repair.row, serialDay(repair.day));
  return finding(table, at, by.asks ? "query" : "stop", message, tested);
}

const isReached = (row: Row, { objects }: Reaching, { reach, of }: VoidBy): boolean =>
  objects[reach].has(bare(String(row.object ?? ""))) && (of?.(row) ?? true);

const finding = (
  table: JudgedTable,
  at: number,
  weight: Finding["weight"],
  message: string,
  found: string,
): Finding => ({
  rule: RULE,
  weight,
  ...where(table, at, found === "Missing" ? "result" : "date"),
  message,
  found,
});
