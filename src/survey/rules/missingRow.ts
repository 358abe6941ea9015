import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block } from "../find/block";
import { findingAt, type SurveyContext, type SurveyRule } from "./rule";

const inBlock = (block: Block, { text }: SurveyContext): Finding[] =>
  groupBy(block.entries, ({ kind }) => kind).flatMap((entries) => {
    const panels = groupBy(
      entries.filter(({ panel }) => panel !== ""),
      ({ panel }) => panel,
    );
    if (panels.length < 3) return [];
    const has = panels.map(
      (group) => new Set(group.map(({ position, stage }) => `${position}|${stage ?? ""}`)),
    );
    const all = new Map<string, number>();
    for (const set of has) for (const key of set) all.set(key, (all.get(key) ?? 0) + 1);
    const usual = [...all].filter(([, times]) => times >= panels.length * 0.75);
    return panels.flatMap((group, index) => {
      const [first] = group;
      const lacks = usual.filter(([key]) => !has[index]?.has(key));
      return !first || lacks.length === 0 || lacks.length > usual.length / 2
        ? []
        : lacks.map(([key, times]) =>
            findingAt(
              "missing-row",
              "query",
              block,
              first,
              first.address,
              text.missingRow(first.panel, key.replace("|", " ").trim(), times),
            ),
          );
    });
  });

/** A connection that one panel lacks and most others have. */
export const missingRow: SurveyRule = {
  id: "missing-row",
  find: (context) => context.survey.blocks.flatMap((block) => inBlock(block, context)),
};
