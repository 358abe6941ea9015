import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry } from "../find/block";
import type { Cell } from "../read/cells";
import { boundsOf } from "./judge";
import { findingAt, type SurveyContext, type SurveyRule, written } from "./rule";

/** Tests whose readings are told by how far they are off in percent. */
const OF_ERROR: readonly string[] = [
  "currentTransformer",
  "voltageTransformer",
  "metering",
  "protection",
];

/** Errors from which on a table shows how small they are, how much larger one has to be than all others, and from how many percent on (common practice, no source). */
const [ENOUGH, TIMES, LEAST] = [6, 4, 1];

interface Off {
  readonly entry: Entry;
  readonly error: Cell;
  readonly value: number;
}

const oddOf = (errors: readonly Off[]): Off | undefined => {
  if (errors.length < ENOUGH) return undefined;
  const [odd, next] = errors.toSorted((one, other) => other.value - one.value);
  return odd && next && odd.value >= LEAST && odd.value > next.value * TIMES ? odd : undefined;
};

const inBlock = (block: Block, context: SurveyContext): Finding[] => {
  const errors = block.entries.flatMap((entry): Off[] => {
    const { error } = entry.beside;
    return OF_ERROR.includes(entry.kind) && error?.number !== undefined && entry.cell !== undefined
      ? [{ entry, error, value: Math.abs(error.number) }]
      : [];
  });
  return groupBy(errors, ({ entry }) => entry.kind).flatMap((alike): Finding[] => {
    const once = groupBy(alike, ({ error }) => error.address).flatMap(([first]) => first ?? []);
    const odd = oddOf(once);
    const isJudged = odd !== undefined && boundsOf(odd.entry, context).length > 0;
    if (!odd || isJudged) return [];
    const others = once.filter((one) => one !== odd).map(({ value }) => value);
    return [
      findingAt(
        "survey-off-error",
        "query",
        block,
        odd.entry,
        odd.error.address,
        context.text.offError(written(odd.error.number ?? 0), written(Math.max(...others))),
        { found: odd.error.text },
      ),
    ];
  });
};

/** An error several times as large as any other of its table, where nothing bounds it. */
export const oddError: SurveyRule = {
  id: "survey-off-error",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
