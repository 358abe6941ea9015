import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import { inBaseUnit } from "../read/cells";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

/** A third of the value before is no drift (common practice, no source). */
const DROP = 1 / 3;
/** Cables come back lower, by what is left of the charge of the test (common practice, no source). */
const CABLE_DROP = 1 / 5;

const OF_INSULATION: readonly string[] = ["insulation", "cable"];

/** The same insulation before and after the withstand test. */
interface Pair {
  readonly block: Block;
  readonly before: Entry;
  readonly after: Entry;
  /** What is left of the value before. */
  readonly left: number;
  readonly isOneTable: boolean;
}

const base = ({ cell, unit }: Entry): number | undefined =>
  cell?.number === undefined ? undefined : unit ? inBaseUnit(cell.number, unit) : cell.number;

const pairsOf = ({ survey }: SurveyContext): Pair[] =>
  groupBy(
    survey.blocks.flatMap((block) =>
      block.entries.flatMap((entry) =>
        OF_INSULATION.includes(entry.kind) && entry.stage !== undefined && base(entry) !== undefined
          ? [{ block, entry }]
          : [],
      ),
    ),
    ({ entry: { kind, panel, position } }) => `${kind} ${panel} ${position}`,
  ).flatMap((group): Pair[] => {
    const before = group.find(({ entry }) => entry.stage === "before");
    const after = group.find(({ entry }) => entry.stage === "after");
    const [first, second] = [before, after].map((one) => one && base(one.entry));
    return before && after && first !== undefined && second !== undefined && first > 0
      ? [
          {
            block: after.block,
            before: before.entry,
            after: after.entry,
            left: second / first,
            isOneTable: after.block === before.block,
          },
        ]
      : [];
  });

/** Pairs from which on they show whether the values of two tables go together at all. */
const ENOUGH = 6;
const NEAR = 1.5;

/** Whether the values after go with those before: most of them are near. */
const goTogether = (pairs: readonly Pair[]): boolean =>
  pairs.length >= ENOUGH &&
  pairs.filter(({ left }) => left < NEAR && left > 1 / NEAR).length >= pairs.length * 0.7;

const isDrop = ({ after, left }: Pair): boolean =>
  left < (after.kind === "cable" ? CABLE_DROP : DROP) && (after.cell?.bound ?? "exact") === "exact";

/** An insulation resistance that came back much lower after the withstand test. */
export const drops: SurveyRule = {
  id: "survey-drop",
  find: (context) => {
    const pairs = pairsOf(context);
    const asked = goTogether(pairs) ? pairs : pairs.filter(({ isOneTable }) => isOneTable);
    return asked
      .filter(isDrop)
      .map(
        ({ block, before, after }): Finding =>
          findingAt(
            "survey-drop",
            "query",
            block,
            after,
            after.address,
            context.text.drop(
              written(after.cell?.number ?? 0, after.unit),
              written(before.cell?.number ?? 0, before.unit),
            ),
            { found: after.cell?.text },
          ),
      );
  },
};
