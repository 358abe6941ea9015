import type { Lineup } from "../lineup/lineup";
import { type OwnLimit, ownSourceText } from "../lineup/ownCriterion";
import type { Result } from "../quantities/result";
import { type Criterion, sourceText } from "../standards/criterion";
import type { CellValue, Column, Row } from "./kind";

/** The figure of a criterion as a cell; blank where the basis gives none. */
export const limitOf = (found: Result<Criterion>): CellValue =>
  found.ok ? found.value.value : null;

/** Where a limit comes from in one line, or why there is none; blank text for no limit at all. */
export const sourceOf = (limit: OwnLimit | Criterion | Result<Criterion> | undefined): string => {
  if (limit === undefined) return "";
  if ("document" in limit) return ownSourceText(limit);
  if ("source" in limit) return sourceText(limit.source);
  return limit.ok ? sourceText(limit.value.source) : limit.reason;
};

/** What stands for the source of a limit that the lineup does not give and people may type. */
export const TO_TYPE = "none given: type the value here and name its document in the remarks";

/** The column that names the source of every limit of its row. */
export const sources = (
  named: (row: Row, lineup: Lineup) => readonly (readonly [limit: string, source: string])[],
): Column => ({
  id: "sources",
  header: "Sources of limits",
  role: "given",
  width: 64,
  value: (row, lineup) =>
    named(row, lineup)
      .map(([limit, source]) => `${limit}: ${source}`)
      .join("; "),
});
