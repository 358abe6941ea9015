import type { Column } from "../records/kind";

export const FINDINGS_SHEET = "Findings";
export const FINDINGS_TABLE = "GearFindings";

const column = (id: string, header: string, width: number): Column => ({
  id,
  header,
  role: "note",
  width,
});

export const FINDINGS_COLUMNS: readonly Column[] = [
  column("weight", "Weight", 9),
  column("rule", "Rule", 22),
  column("sheet", "Sheet", 16),
  column("address", "Cell", 8),
  column("row", "Row", 34),
  column("column", "Column", 18),
  column("message", "Finding", 90),
  column("found", "Found", 16),
  column("expected", "Expected", 16),
  column("source", "Source", 40),
  column("concession", "Conceded", 40),
];
