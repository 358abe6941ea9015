import { parseA1Range } from "@borgar/fx/xlsx";
import type { Finding } from "../check/findings/finding";
import type { Messages } from "../messages/messages";
import { groupBy } from "../quantities/groupedBy";
import type { Block, Survey } from "./find/block";

/** Findings of one rule from which on, and the share of the readings of like tables, that say more of how a table was read than of what is wrong in it. */
const [MANY, SHARE] = [6, 0.3];

/** Tables of one form: the cards of several panels have the same titles. */
const formOf = ({ columns, kinds }: Block): string =>
  [...kinds, ...columns.map(({ title }) => title)].join("|");

const holds = ({ sheet, range }: Block, finding: Finding): boolean => {
  const [area, at] = [parseA1Range(range), parseA1Range(finding.address)];
  if (sheet !== finding.sheet || !area || !at) return false;
  const [row, column] = [at.top ?? 0, at.left ?? 0];
  return (
    row >= (area.top ?? 0) &&
    row <= (area.bottom ?? 0) &&
    column >= (area.left ?? 0) &&
    column <= (area.right ?? 0)
  );
};

/**
 * What is told again and again in tables of one form, once: nobody reads fifty stops of one sort, and they
 * mean that the table is not what it was taken for, or that it does so throughout.
 */
export function tellOnce(
  findings: readonly Finding[],
  { blocks }: Survey,
  text: Messages["survey"],
): readonly Finding[] {
  const asked = findings.filter(({ weight }) => weight !== "note");
  const inForm = groupBy(
    asked.flatMap((finding) => {
      const block = blocks.find((one) => holds(one, finding));
      return block ? [{ finding, form: formOf(block) }] : [];
    }),
    ({ finding, form }) => `${finding.rule} ${form}`,
  );
  const once = new Map<Finding, Finding>();
  const left = new Set<Finding>();
  for (const group of inForm) {
    const [first] = group;
    const readings = blocks
      .filter((block) => formOf(block) === first?.form)
      .reduce((sum, { entries }) => sum + entries.length, 0);
    if (!first || group.length < MANY || group.length <= readings * SHARE) continue;
    for (const { finding } of group) left.add(finding);
    once.set(first.finding, {
      ...first.finding,
      weight: "query",
      message: text.toldOnce(group.length, readings, first.finding.message),
    });
  }
  return findings.flatMap((finding) => (left.has(finding) ? (once.get(finding) ?? []) : [finding]));
}
