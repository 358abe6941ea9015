import type { FindingsText } from "../../messages/messages";
import type { Finding } from "./finding";

/** Cells that a finding names one by one. */
const NAMED = 5;

/**
 * The findings of a table of which each is of an entry, which it found: one for each entry of a column, at
 * its first row. A concession of it is of so many rows and no more.
 */
export const oncePerEntry = (found: readonly Finding[], text: FindingsText): Finding[] => {
  const groups = new Map<string, Finding[]>();
  for (const finding of found) {
    const entry = `${finding.column}\u0000${String(finding.found).toLowerCase()}`;
    const group = groups.get(entry) ?? [];
    groups.set(entry, group);
    group.push(finding);
  }
  return [...groups.values()].flatMap((group) => together(group, text));
};

const together = ([first, ...others]: readonly Finding[], text: FindingsText): Finding[] => {
  if (!first || others.length === 0) return first ? [first] : [];
  const named = others.slice(0, NAMED).map(({ address }) => address);
  return [
    {
      ...first,
      // By this a concession knows its finding: the same in every language.
      found: `${first.found} × ${others.length + 1}`,
      message: text.furtherRows(first.message, others.length, named),
    },
  ];
};
