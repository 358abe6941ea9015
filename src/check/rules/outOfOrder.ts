import type { Lineup } from "../../lineup/lineup";
import type { FindingsText } from "../../messages/messages";
import { serialDay } from "../../quantities/dates";
import { memoizeFor } from "../../quantities/memoizeFor";
import { alikeRows, cellsOf } from "../../records/cellsOf";
import { LINEUP } from "../../records/columns/common";
import { type Step, verdictOf } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import { inOrder, median } from "../among/similar";
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
import { panelsOf } from "../panelsOf";

/** Steps of which the first is over before the others are made (common practice); what kinds say of each other is asked by rules of their own. */
const BEFORE: readonly (readonly [first: Step, then: readonly Step[]])[] = [
  [
    "receipt",
    [
      "installation",
      "joints",
      "earthing",
      "devices",
      "cables",
      "insulation",
      "withstand",
      "functions",
      "energization",
    ],
  ],
  ["installation", ["cables", "insulation", "withstand", "functions", "energization"]],
  ["joints", ["insulation", "withstand", "energization"]],
  ["earthing", ["withstand", "energization"]],
  ["devices", ["energization"]],
  ["cables", ["energization"]],
  ["insulation", ["energization"]],
  ["withstand", ["energization"]],
  ["functions", ["energization"]],
];

/** The rows of a table that are of one object, day and stage. */
interface Dated {
  readonly table: JudgedTable;
  readonly rows: readonly number[];
  readonly day: number;
  readonly panels: readonly string[];
}

/** A record of one step of the work that is dated on the wrong side of another step on the same panel. */
export const outOfOrder: Rule = {
  id: "out-of-order",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const dated = datedBySteps(context);
    const told = new Set<string>();
    const found = BEFORE.flatMap(([first, then]) =>
      then.flatMap((later) =>
        ofPair(dated.get(first) ?? [], dated.get(later) ?? [], context).filter(
          ({ sheet, address }) => {
            const place = `${sheet} ${address}`;
            return told.has(place) ? false : told.add(place);
          },
        ),
      ),
    );
    const sheets = new Map<string, Finding[]>();
    for (const one of found) {
      const before = sheets.get(one.sheet);
      if (before) before.push(one);
      else sheets.set(one.sheet, [one]);
    }
    return [...sheets.values()].flatMap((some) => oncePerEntry(some, context.text));
  },
};

function datedBySteps({ tables, lineup }: Context): ReadonlyMap<Step, readonly Dated[]> {
  const steps = new Map<Step, Dated[]>();
  for (const table of tables) {
    const { step } = table.kind;
    if (step === undefined) continue;
    const some = steps.get(step) ?? [];
    steps.set(step, some);
    for (const dated of datedIn(table, lineup)) some.push(dated);
  }
  return steps;
}

/** The dated rows of which something is recorded, by what they are about and their day. */
const datedIn = (table: JudgedTable, lineup: Lineup): Dated[] =>
  alikeRows(table.judged, ["stage", "result", "date", "object"], table.aside).flatMap((rows) => {
    const judged = table.judged[rows[0] ?? -1] ?? {};
    const day = dayOf(judged.date);
    // The insulation after the withstand test is of a later step.
    if (day === undefined || judged.stage === "after" || verdictOf(judged) === "Missing") return [];
    const panels = panelsOf(lineup, String(judged.object ?? LINEUP));
    return [{ table, rows, day: Math.floor(day), panels }];
  });

/** Rows of two steps that stand in the wrong order: those of the step with fewer of them. */
function ofPair(first: readonly Dated[], then: readonly Dated[], context: Context): Finding[] {
  if (first.length === 0 || then.length === 0) return [];
  const earliest = earliestOf(then);
  const latest = latestOf(first);
  const late = rowsWrong(first, earliest, (day, other) => day > other);
  const early = rowsWrong(then, latest, (day, other) => day < other);
  const says = context.text.rules["out-of-order"];
  const isLate =
    late.length === early.length ? strays(late) >= strays(early) : late.length < early.length;
  return isLate
    ? late.map((one) => finding(one, says.late(...words(one, context.text))))
    : early.map((one) => finding(one, says.early(...words(one, context.text))));
}

/** How far rows lie from the middle day of their own tables. */
const strays = (some: readonly Wrong[]): number =>
  Math.max(0, ...some.map(({ table, day }) => Math.abs(day - middleDay(table))));

const middleDay = memoizeFor((table: JudgedTable): number =>
  median(inOrder(cellsOf(table.rows, "date").flatMap((date) => dayOf(date) ?? []))),
);

interface Wrong {
  readonly table: JudgedTable;
  readonly row: number;
  readonly day: number;
  /** Of the other step, that it is on the wrong side of. */
  readonly other: Dated;
}

const words = ({ table, row, day, other }: Wrong, text: FindingsText) =>
  [
    rowName(table, row),
    serialDay(day),
    kindWords(text, other.table.kind.id).title,
    serialDay(other.day),
  ] as const;

/** The rows on the wrong side of another step on the same panel, in the order of the tables and of their rows. */
const rowsWrong = (
  some: readonly Dated[],
  others: ReadonlyMap<string, Dated>,
  isWrong: (day: number, other: number) => boolean,
): Wrong[] => {
  const tables = new Map<JudgedTable, Wrong[]>();
  for (const { table, rows, day, panels } of some) {
    const sided = panels
      .map((panel) => others.get(panel))
      .find((other) => other !== undefined && isWrong(day, other.day));
    if (sided === undefined) continue;
    const wrong = tables.get(table) ?? [];
    tables.set(table, wrong);
    for (const row of rows) wrong.push({ table, row, day, other: sided });
  }
  return [...tables.values()].flatMap((wrong) => wrong.sort((one, other) => one.row - other.row));
};

/** Of a step by panel, asked for by each step that it is held against. */
const earliestOf = memoizeFor((some: readonly Dated[]) =>
  byPanel(some, (day, other) => day < other),
);
const latestOf = memoizeFor((some: readonly Dated[]) => byPanel(some, (day, other) => day > other));

function byPanel(
  some: readonly Dated[],
  isRather: (day: number, other: number) => boolean,
): ReadonlyMap<string, Dated> {
  const chosen = new Map<string, Dated>();
  for (const one of some)
    for (const panel of one.panels) {
      const before = chosen.get(panel);
      if (!before || isRather(one.day, before.day)) chosen.set(panel, one);
    }
  return chosen;
}

const finding = ({ table, row, day }: Wrong, message: string): Finding => ({
  rule: "out-of-order",
  weight: "query",
  ...where(table, row, "date"),
  message,
  found: serialDay(day),
});
