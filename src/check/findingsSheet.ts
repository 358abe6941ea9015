import { FINDINGS_COLUMNS, FINDINGS_SHEET, FINDINGS_TABLE } from "../sheets/ours/findingsTable";
import type { PlannedSheet } from "../sheets/plannedSheet";
import type { Report } from "./check";
import type { Finding } from "./finding";

const ORDER = { stop: 0, query: 1, note: 2 } as const;

/** The findings of a check as a sheet of the workbook, heaviest first. */
export const findingsSheet = ({ findings }: Pick<Report, "findings">): PlannedSheet => ({
  sheet: FINDINGS_SHEET,
  table: FINDINGS_TABLE,
  title: "Findings of the check",
  purpose:
    "As the check found them on its day; check again after a change. To accept a finding, copy Rule, Sheet, Row, Column and Found to the sheet Concessions and give a reason, a name and a date.",
  cautions: [
    "Findings evaluate records. No findings does not mean that equipment is safe to energize: that is decided by licensed people under the local code, the site's permit system and the maker's instructions.",
  ],
  columns: FINDINGS_COLUMNS,
  rows: [...findings].sort((one, other) => ORDER[one.weight] - ORDER[other.weight]).map(rowOf),
});

const rowOf = (finding: Finding) => {
  const { weight, rule, sheet, address, message, concession } = finding;
  const { row = null, column = null, found = null, expected = null, source = null } = finding;
  return {
    weight,
    rule,
    sheet,
    address,
    row,
    column,
    message,
    found,
    expected,
    source,
    concession: concession ? `${concession.reason} (${concession.name}, ${concession.date})` : null,
  };
};
