import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import { type Comparison, compare, resultOf, temperatureOf } from "./judge";
import { findingAt, findingOn, type SurveyContext, type SurveyRule, written } from "./rule";

interface Beyond {
  readonly entry: Entry;
  readonly comparison: Comparison;
}

/** Share of the readings of a table from which on the limit itself is in doubt. */
const DOUBT = 0.4;

const findIn = (block: Block, context: SurveyContext): Finding[] => {
  const { text } = context;
  const compared = block.entries.flatMap((entry) =>
    compare(entry, context).map((comparison): Beyond => ({ entry, comparison })),
  );
  const beyond = compared.filter(({ comparison }) => comparison.verdict === "Fail");
  const passed = beyond.filter(({ entry }) => resultOf(entry) !== "Fail");
  const [first] = passed;
  if (first && passed.length >= 5 && passed.length > compared.length * DOUBT) {
    const { limit } = first.comparison;
    return [
      findingOn(
        "survey-limit-doubt",
        "query",
        block,
        text.limitMisread(
          passed.length,
          compared.length,
          limit.side,
          written(limit.number, limit.unit ?? first.entry.unit),
        ),
      ),
    ];
  }
  return groupBy(beyond, ({ comparison }) => comparison.cell.address).flatMap(([one]) =>
    one ? tell(block, one, text) : [],
  );
};

/** How a reading is written that is known to lie above or below a number only. */
const BOUNDS = { exact: "", above: "> ", below: "< " } as const;

const tell = (
  block: Block,
  { entry, comparison }: Beyond,
  text: SurveyContext["text"],
): Finding[] => {
  const { cell, unit, limit, source, temperature } = comparison;
  const warmth = temperature && temperatureOf(entry);
  const value = BOUNDS[cell.bound ?? "exact"] + written(cell.number ?? 0, cell.unit ?? unit);
  const bound = written(limit.number, limit.unit ?? unit);
  const said = [
    warmth ? text.broughtTo20(value, cell.text, written(warmth.celsius, "°C")) : value,
    limit.side,
    bound,
    source ?? text.statedAt(limit.address),
  ] as const;
  const result = resultOf(entry);
  const message =
    result === undefined
      ? text.beyondLimit(...said)
      : result === "Pass"
        ? text.markedPass(...said, entry.beside.result?.text ?? "")
        : text.failedAsSaid(...said);
  const weight = result === "Fail" ? "note" : "stop";
  return [
    findingAt("survey-limit", weight, block, entry, entry.address, message, {
      column: entry.column.title,
      found: cell.text,
      expected: `${limit.side === "least" ? "≥" : "≤"} ${bound}`,
    }),
  ];
};

/** A reading outside the limit that the workbook itself states, or outside the criterion where it states none. */
export const beyondLimit: SurveyRule = {
  id: "survey-limit",
  find: (context) => context.survey.blocks.flatMap((block) => findIn(block, context)),
};
