import type { FindingsText } from "../../messages/messages";
import { groupedBy } from "../../quantities/groupedBy";
import type { Finding } from "./finding";

/** Cells that a finding names one by one. */
const NAMED = 5;
/** So many findings of a sort in one table are one, whatever panels they are of. */
const MANY = 20;

/** How far one cause of a rule's findings reaches. */
export type Reach = "panel" | "table";

/** A finding of one cause, told at its first row, with the cells of the further ones. */
export const together = (
  [first, ...others]: readonly Finding[],
  text: FindingsText,
  says: FindingsText["furtherRows"] = text.furtherRows,
): readonly Finding[] => {
  if (!first || others.length === 0) return first ? [first] : [];
  const further = others.map(({ address }) => address);
  return [
    {
      ...first,
      // By this a concession knows its finding: the same in every language.
      found: `${first.found ?? ""} × ${others.length + 1}`.trim(),
      further,
      message: says(first.message, others.length, further.slice(0, NAMED)),
    },
  ];
};

/**
 * Findings of which several rows of a table say the same in the same words: one for each cause, at its first
 * row. What stands apart, as one that was accepted by itself, stays so.
 *
 * @param reachOf how far one cause of a rule's reaches; undefined where it tells every row
 */
export function gatherFindings(
  findings: readonly Finding[],
  text: FindingsText,
  reachOf: (rule: string) => Reach | undefined,
  standsApart: (finding: Finding) => boolean,
): readonly Finding[] {
  const sorts = groupedBy(
    findings.filter((finding) => reachOf(finding.rule) !== undefined && !standsApart(finding)),
    sortOf,
  );
  const told = new Map<Finding, readonly Finding[]>();
  for (const sort of sorts.values()) {
    if (sort.length < 2) continue;
    const causes =
      sort.length >= MANY
        ? [sort]
        : groupedBy(sort, (finding) =>
            reachOf(finding.rule) === "panel" ? (finding.panel ?? "") : "",
          ).values();
    for (const cause of causes)
      for (const [at, finding] of cause.entries())
        told.set(finding, at === 0 ? together(cause, text) : []);
  }
  return told.size === 0 ? findings : findings.flatMap((finding) => told.get(finding) ?? [finding]);
}

/** What a finding says, but for the name of its row. */
const sortOf = ({ rule, weight, sheet, column, row, message }: Finding): string =>
  [rule, weight, sheet, column, row ? message.replaceAll(row, "") : message].join("\u0000");
