import { sameName } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
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
function workOf(point: Row, { tables, lineup }: Context): Work | undefined {
  const activity = String(point.part ?? "");
  const step = STEP_WORDS.find(([words]) => words.test(activity))?.[1];
  if (step === undefined || (point.point !== "W" && point.point !== "H")) return undefined;
  const panels = new Set(panelsOf(lineup, String(point.object ?? LINEUP)));
  const about = (object: unknown) =>
    panelsOf(lineup, String(object ?? LINEUP)).some((panel) => panels.has(panel));
  const records = tables
    .filter(({ kind }) => kind.step === step)
    .flatMap(recordsOf)
    .filter((row) => about(row.object));
  const days = records.flatMap(({ date }) => dayOf(date) ?? []);
  return {
    title: tables.find(({ kind }) => kind.step === step)?.kind.title ?? step,
    first: days.length > 0 ? Math.min(...days) : undefined,
    by: [...new Set(records.map(({ by }) => String(by ?? "").trim()))].filter((one) => one !== ""),
  };
}

const recordsOf = ({ judged, aside }: JudgedTable): Row[] =>
  judged.filter(
    (row, at) => !aside.has(at) && verdictOf(row) !== "Missing" && row.stage !== "after",
  );
