import type { FindingsText } from "../../messages/messages";
import { groupedBy } from "../../quantities/groupedBy";
import type { Finding } from "./finding";
import { together } from "./gatherFindings";

/**
 * The findings of a table of which each is of an entry, which it found: one for each entry of a column, at
 * its first row. A concession of it is of so many rows and no more.
 */
export const oncePerEntry = (found: readonly Finding[], text: FindingsText): Finding[] =>
  [
    ...groupedBy(
      found,
      (finding) => `${finding.column}\u0000${String(finding.found).toLowerCase()}`,
    ).values(),
  ].flatMap((group) => together(group, text));
