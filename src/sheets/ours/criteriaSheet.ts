import type { Lineup } from "../../lineup/lineup";
import type { Column } from "../../records/kind";
import type { PlannedSheet } from "../plan/plannedSheet";

export const CRITERIA_TABLE = "GearCriteria";

export const CRITERIA_COLUMNS: readonly Column[] = [
  { id: "quantity", header: "Quantity", role: "key", width: 30 },
  { id: "applies", header: "Applies to", role: "key", width: 20 },
  { id: "from", header: "Given by", role: "key", width: 10 },
  { id: "value", header: "Value", role: "given", width: 12 },
  { id: "document", header: "Document", role: "given", width: 44 },
];

/** The maker's and project's own criteria, which come before the standard's. */
export const criteriaSheet = (lineup: Lineup): PlannedSheet => ({
  sheet: "Criteria",
  table: CRITERIA_TABLE,
  title: "Maker's and project's own criteria",
  purpose: `They come before the standard's (basis ${lineup.basis}): maker, project, standard. Listed from the lineup's description; a change belongs there, then build again.`,
  cautions: [],
  columns: CRITERIA_COLUMNS,
  rows: lineup.criteria.map(({ quantity, applies, from, value, document }) => ({
    quantity,
    applies: applies?.join(", ") ?? "all",
    from,
    value,
    document,
  })),
});
