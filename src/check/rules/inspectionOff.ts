import { sameName } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { memoizeFor } from "../../quantities/memoizeFor";
import { alikeRows } from "../../records/cellsOf";
import { LINEUP } from "../../records/columns/common";
import { type Row, type Step, verdictOf } from "../../records/kind";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  overRows,
  type Rule,
  rowName,
  where,
  withRole,
} from "../context";
import type { Finding } from "../finding";
import { panelsOf } from "../panelsOf";

/** The step that an activity of an inspection plan speaks of, by its words. */
const STEP_WORDS: readonly (readonly [words: RegExp, step: Step])[] = [
  [/withstand|high.?voltage|hochspannung|tenue|rigidez/i, "withstand"],
  [/function|funktion|fonction|func/i, "functions"],
  [/insulation|isolat|isolement|aislam|isolam/i, "insulation"],
  [/torque|bolt|joint|drehmoment|serrage|apriete|aperto/i, "joints"],
  [/earth|ground|erdung|terre|tierra|terra/i, "earthing"],
  [/receipt|unload|deliver|wareneingang|réception|recep/i, "receipt"],
];

const isInspection = withRole("inspection");

/** The records of a step, of the panels of an inspection point. */
interface Work {
  readonly title: string;
  readonly first: number | undefined;
  readonly by: readonly string[];
}

/** An inspection point held before the work that it looks at, asked for after it was held, or released by who did the work. */
export const inspectionOff: Rule = {
  id: "inspection-off",
  reads: "book",
  of: everyKind,
  find: (context) =>
    context.tables
      .filter(({ kind }) => isInspection(kind))
      .flatMap((table) =>
        overRows(table, (row, stored, judged) =>
          verdictOf(judged) === "Pass" ? ofPoint(table, row, stored, context) : undefined,
        ).map(({ finding }) => finding),
      ),
};

/** What is wrong with a point that is released: the days of it, or who released it. */
function ofPoint(table: JudgedTable, row: number, stored: Row, context: Context): Finding[] {
  const says = context.text.rules["inspection-off"];
  const name = rowName(table, row);
  const at = (column: string, message: string): Finding => ({
    rule: "inspection-off",
    weight: "query",
    ...where(table, row, column),
    message,
    found: String(stored[column] ?? ""),
  });
  const [held, requested] = [dayOf(stored.date), dayOf(stored.requested)];
  const late =
    held !== undefined && requested !== undefined && requested >= Math.floor(held) + 1
      ? [at("requested", says.requested(name, serialDay(requested), serialDay(held)))]
      : [];
  const work = workOf(stored, context);
  if (!work) return late;
  const { title, first, by } = work;
  const who = String(stored.by ?? "").trim();
  const isOwn = who !== "" && by.some((one) => sameName(one, who));
  const early =
    stored.point === "W" && held !== undefined && first !== undefined && held < Math.floor(first)
      ? [at("date", says.early(name, serialDay(held), title, serialDay(first)))]
      : late;
  return isOwn ? [...early, at("by", says.own(name, who, title))] : early;
}

/** The work that a witness point looks at, or that a hold point lets go ahead. */
function workOf(point: Row, context: Context): Work | undefined {
  const activity = String(point.part ?? "");
  const step = STEP_WORDS.find(([words]) => words.test(activity))?.[1];
  if (step === undefined || (point.point !== "W" && point.point !== "H")) return undefined;
  const { title, panels } = workIn(context).get(step) ?? { title: step, panels: NO_WORK };
  const done = panelsOf(context.lineup, String(point.object ?? LINEUP)).flatMap(
    (panel) => panels.get(panel) ?? [],
  );
  return {
    title,
    first: done.reduce<number | undefined>((first, work) => earlier(first, work.first), undefined),
    by: [...new Set(done.flatMap(({ by }) => [...by]))],
  };
}

/** What was recorded of one step on one panel: the first day, and by whom. */
interface Done {
  first: number | undefined;
  readonly by: Set<string>;
}

const NO_WORK: ReadonlyMap<string, Done> = new Map();

/** What was recorded of each step, by panel. */
const workIn = memoizeFor(({ tables, lineup }: Context) => {
  const steps = new Map<Step, { readonly title: string; readonly panels: Map<string, Done> }>();
  for (const table of tables) {
    const { step, title } = table.kind;
    if (step === undefined) continue;
    const { panels } = steps.get(step) ?? { panels: new Map<string, Done>() };
    if (!steps.has(step)) steps.set(step, { title, panels });
    for (const row of recordsOf(table))
      for (const panel of panelsOf(lineup, String(row.object ?? LINEUP))) note(panels, panel, row);
  }
  return steps;
});

function note(panels: Map<string, Done>, panel: string, { date, by }: Row): void {
  const done = panels.get(panel) ?? { first: undefined, by: new Set<string>() };
  panels.set(panel, done);
  done.first = earlier(done.first, dayOf(date));
  const who = String(by ?? "").trim();
  if (who !== "") done.by.add(who);
}

const earlier = (one: number | undefined, other: number | undefined): number | undefined =>
  one === undefined || other === undefined ? (one ?? other) : Math.min(one, other);

/** One of the rows of each object, day and person of which something is recorded. */
const recordsOf = ({ judged, aside }: JudgedTable): Row[] =>
  alikeRows(judged, ["stage", "result", "date", "by", "object"], aside)
    .map(([row = 0]) => judged[row] ?? {})
    .filter((row) => verdictOf(row) !== "Missing" && row.stage !== "after");
