import { sameName } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { memoizeFor } from "../../quantities/memoizeFor";
import { alikeRows } from "../../records/cellsOf";
import { LINEUP } from "../../records/columns/common";
import { type Row, type Step, verdictOf } from "../../records/kind";
import { kindWords, storedKindWords } from "../../records/kindWords";
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
import type { Finding } from "../findings/finding";
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

/** Steps that are tests: who witnesses one is there while it is made, and not when it is done. */
const TESTS: ReadonlySet<Step> = new Set(["insulation", "withstand", "functions"]);

/** The records that an inspection point looks at, of its panels. */
interface Work {
  /** Of the record that was made first. */
  readonly title: string;
  readonly first: number | undefined;
  /** The days on which a test was made; none where looking at it later is as good. */
  readonly days: ReadonlySet<number>;
  readonly by: readonly string[];
}

/** An inspection point held before the work that it looks at, asked for after it was held, or released by who did the work. */
export const inspectionOff: Rule = {
  id: "inspection-off",
  reach: "table",
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
  const { title, first, days, by } = work;
  const who = String(stored.by ?? "").trim();
  const isOwn = who !== "" && by.some((one) => sameName(one, who));
  const isWitness = stored.point === "W" && held !== undefined && first !== undefined;
  const early =
    isWitness && held < Math.floor(first)
      ? [at("date", says.early(name, serialDay(held), title, serialDay(first)))]
      : isWitness && days.size > 0 && !days.has(Math.floor(held))
        ? [at("date", says.elsewhen(name, serialDay(held), title, daysIn(days)))]
        : late;
  return isOwn ? [...early, at("by", says.own(name, who, title))] : early;
}

/** Days that a finding names one by one. */
const NAMED = 4;

const daysIn = (days: ReadonlySet<number>): readonly string[] =>
  [...days]
    .sort((one, other) => one - other)
    .slice(0, NAMED)
    .map(serialDay);

/** The work that a witness point looks at, or that a hold point lets go ahead. */
function workOf(point: Row, context: Context): Work | undefined {
  const activity = String(point.part ?? "");
  const step = STEP_WORDS.find(([words]) => words.test(activity))?.[1];
  if (step === undefined || (point.point !== "W" && point.point !== "H")) return undefined;
  const kinds = recordedBy(step, activity, context);
  const done = panelsOf(context.lineup, String(point.object ?? LINEUP)).flatMap((panel) =>
    kinds.flatMap(({ kind, panels }) => {
      const its = panels.get(panel);
      return its ? [{ kind, ...its }] : [];
    }),
  );
  const first = done.reduce<number | undefined>((one, work) => earlier(one, work.first), undefined);
  const days = new Set(done.flatMap((work) => [...work.days]));
  return {
    title: kindWords(
      context.text,
      done.find((work) => work.first === first)?.kind ?? kinds[0]?.kind ?? step,
    ).title,
    first,
    days: TESTS.has(step) ? days : new Set(),
    by: [...new Set(done.flatMap(({ by }) => [...by]))],
  };
}

/** The records of a step; where an activity has a word of the title of some, these alone. */
function recordedBy(step: Step, activity: string, context: Context): readonly Recorded[] {
  const known = recordedIn(context);
  const before = known.get(activity);
  if (before) return before;
  const all = workIn(context).get(step) ?? [];
  const words = wordsOf(activity);
  const named = all.filter(({ kind }) =>
    wordsOf(storedKindWords(kind).title).some((word) => words.includes(word)),
  );
  const recorded = named.length > 0 ? named : all;
  known.set(activity, recorded);
  return recorded;
}

/** By activity, since every panel has the same. */
const recordedIn = memoizeFor((_context: Context) => new Map<string, readonly Recorded[]>());

/** The words of a title that say what it is of: none that every other title has. */
const wordsOf = (title: string): string[] =>
  title
    .toLowerCase()
    .split(/[^\p{L}]+/u)
    .filter((word) => word.length >= 5 && !/^(?:tests?|before|after|release|witness)$/.test(word));

/** What was recorded of one kind, by panel. */
interface Recorded {
  /** Id of the record kind. */
  readonly kind: string;
  readonly panels: Map<string, Done>;
}

/** What was recorded of one kind on one panel: the first day, all days, and by whom. */
interface Done {
  first: number | undefined;
  readonly days: Set<number>;
  readonly by: Set<string>;
}

/** What was recorded of each step, kind by kind. */
const workIn = memoizeFor(({ tables, lineup }: Context) => {
  const steps = new Map<Step, Recorded[]>();
  for (const table of tables) {
    const { step, id: kind } = table.kind;
    if (step === undefined) continue;
    const panels = new Map<string, Done>();
    steps.set(step, [...(steps.get(step) ?? []), { kind, panels }]);
    for (const row of recordsOf(table))
      for (const panel of panelsOf(lineup, String(row.object ?? LINEUP))) note(panels, panel, row);
  }
  return steps;
});

function note(panels: Map<string, Done>, panel: string, { date, by }: Row): void {
  const done = panels.get(panel) ?? { first: undefined, days: new Set(), by: new Set() };
  panels.set(panel, done);
  const day = dayOf(date);
  done.first = earlier(done.first, day);
  if (day !== undefined) done.days.add(Math.floor(day));
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
