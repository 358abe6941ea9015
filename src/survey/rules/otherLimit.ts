import type { Finding } from "../../check/findings/finding";
import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry, Limit } from "../find/block";
import { classOf } from "../find/kindOf";
import { inBaseUnit } from "../read/cells";
import { findingAt, mostOf, type SurveyContext, type SurveyRule, written } from "./rule";

interface Stated {
  readonly block: Block;
  readonly entry: Entry;
  readonly limit: Limit;
  readonly value: number;
}

const isLooser = (side: Limit["side"], value: number, usual: number) =>
  side === "least" ? value < usual : value > usual;

/** Whether two lines are about bolts of one sort. */
const isSamePart = (one: Entry, other: Entry) => one.beside.part?.text === other.beside.part?.text;

/** What is called for where it stands alike in nearly all lines: one torque for all bolts of a sort. */
const calledFor = (block: Block, entry: Entry): Limit[] => {
  const { required } = entry.beside;
  return entry.kind === "torque" && required?.number !== undefined && block.lines.length >= 6
    ? [
        {
          side: "least",
          number: required.number,
          unit: required.unit ?? entry.unit,
          address: required.address,
        },
      ]
    : [];
};

const find = ({ survey, text }: SurveyContext): Finding[] => {
  const stated = survey.blocks.flatMap((block) =>
    block.entries.flatMap((entry) =>
      [...entry.limits, ...calledFor(block, entry)].map((limit): Stated => {
        const unit = limit.unit ?? entry.unit;
        return { block, entry, limit, value: unit ? inBaseUnit(limit.number, unit) : limit.number };
      }),
    ),
  );
  const once = groupBy(stated, ({ block, limit }) => `${block.sheet}!${limit.address}`).flatMap(
    ([first]) => first ?? [],
  );
  return groupBy(
    once,
    ({ entry, limit }) => `${entry.kind} ${limit.side} ${limit.unit ? classOf(limit.unit) : ""}`,
  ).flatMap((group) => {
    const most = mostOf(
      group.map(({ value }) => value),
      0.7,
    );
    if (!most || group.length < 5) return [];
    const usual = group.find(({ value }) => value === most.value);
    return group
      .filter(({ value }) => Math.abs(value / most.value - 1) > 1e-6)
      .flatMap((own) => {
        const { block, entry, limit, value } = own;
        // Another limit for another part is no slip: the same value for the same part elsewhere shows it.
        const alike = group.filter(
          (other) => other.value === value && other.entry.position === entry.position,
        ).length;
        if (alike > 1) return [];
        const isOtherPart = !group.some((other) => other !== own && isSamePart(other.entry, entry));
        if (entry.kind === "torque" && isOtherPart) return [];
        return [
          findingAt(
            "survey-other-limit",
            isLooser(limit.side, value, most.value) ? "query" : "note",
            block,
            entry,
            limit.address,
            text.otherLimit(
              written(limit.number, limit.unit),
              written(usual?.limit.number ?? 0, usual?.limit.unit),
              most.times,
              group.length,
            ),
            {
              found: limit.number,
              expected: usual?.limit.number,
            },
          ),
        ];
      });
  });
};

/** A limit that differs from what the same limit is everywhere else in the workbook. */
export const otherLimit: SurveyRule = { id: "survey-other-limit", find };
