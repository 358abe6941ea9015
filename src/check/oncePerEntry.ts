import { howMany } from "../quantities/howMany";
import type { Finding } from "./finding";

/** Cells that a finding names one by one. */
const NAMED = 5;

/**
 * The findings of a table of which each is of an entry, which it found: one for each entry of a column, at
 * its first row. A concession of it is of so many rows and no more.
 */
export const oncePerEntry = (found: readonly Finding[]): Finding[] => {
  const groups = new Map<string, Finding[]>();
  for (const finding of found) {
    const entry = `${finding.column}\u0000${String(finding.found).toLowerCase()}`;
    const group = groups.get(entry) ?? [];
    groups.set(entry, group);
    group.push(finding);
  }
  return [...groups.values()].flatMap(together);
};

const together = ([first, ...others]: readonly Finding[]): Finding[] => {
  if (!first || others.length === 0) return first ? [first] : [];
  const named = others.slice(0, NAMED).map(({ address }) => address);
  const more = others.length - named.length;
  return [
    {
      ...first,
      found: `${first.found}, ${others.length + 1} rows`,
      message: `${first.message} So it is on ${howMany(others.length, "more row")} of the table, at ${named.join(", ")}${more > 0 ? ` and ${more} more` : ""}.`,
    },
  ];
};
