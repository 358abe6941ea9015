import type { Finding } from "../../check/finding";
import type { Block, Entry } from "../block";
import { inBaseUnit } from "../cells";
import { compare } from "./judge";
import { findingAt, groupBy, type SurveyContext, type SurveyRule, written } from "./rule";

const base = ({ cell, unit }: Entry): number | undefined =>
  cell?.number === undefined ? undefined : unit ? inBaseUnit(cell.number, unit) : cell.number;

/** Poles of one breaker more than 50 % above the lowest are asked about (ANSI/NETA ATS, similar poles and connections). */
const POLES = 1.5;

const poles = (block: Block, context: SurveyContext): Finding[] =>
  groupBy(
    block.entries.filter(({ kind, cell }) => kind === "contact" && cell?.number !== undefined),
    ({ panel, beside }) => `${panel} ${beside.part?.text ?? ""}`,
  ).flatMap((group) => {
    const lowest = group.reduce(
      (least, entry) => ((base(entry) ?? 0) < (base(least) ?? 0) ? entry : least),
      group[0] as Entry,
    );
    const least = base(lowest) ?? 0;
    if (group.length < 2 || group.length > 3 || least <= 0) return [];
    return group.flatMap((entry) => {
      const value = base(entry) ?? 0;
      const fails = compare(entry, context).some(({ verdict }) => verdict === "Fail");
      if (value <= least * POLES || fails) return [];
      const share = Math.round((value / least - 1) * 100);
      return [
        findingAt(
          "survey-apart",
          "query",
          block,
          entry,
          entry.address,
          context.text.apart(
            written(entry.cell?.number ?? 0, entry.unit),
            written(lowest.cell?.number ?? 0, lowest.unit),
            share,
          ),
          { found: entry.cell?.text },
        ),
      ];
    });
  });

/** A third of the value before is no drift (common practice, no source). */
const DROP = 1 / 3;

const drops = (block: Block, context: SurveyContext): Finding[] =>
  groupBy(
    block.entries.filter(
      ({ kind, stage, cell }) =>
        kind === "insulation" && stage !== undefined && cell?.number !== undefined,
    ),
    ({ panel, position }) => `${panel} ${position}`,
  ).flatMap((group) => {
    const before = group.find(({ stage }) => stage === "before");
    const after = group.find(({ stage }) => stage === "after");
    const [first, second] = [before && base(before), after && base(after)];
    if (
      !before ||
      !after ||
      first === undefined ||
      second === undefined ||
      second >= first * DROP ||
      (after.cell?.bound !== "exact" && after.cell?.bound !== undefined)
    )
      return [];
    return [
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
    ];
  });

/** Readings of like parts that are not alike. */
export const likeness: SurveyRule = {
  id: "survey-apart",
  find: (context) =>
    context.survey.blocks.flatMap((block) => [...poles(block, context), ...drops(block, context)]),
};
