import type { Column } from "../../records/kind";

export const FINDINGS_SHEET = "Findings";
export const FINDINGS_TABLE = "GearFindings";

const column = (id: string, header: string, width: number): Column => ({
  id,
  header,
  role: "note",
  width,
});

/** As wide as a landscape page of A4 holds in print that can be read; what is longer goes on below. */
export const FINDINGS_COLUMNS: readonly Column[] = [
  column("weight", "Weight", 7),
  column("rule", "Rule", 15),
  column("sheet", "Sheet", 13),
  column("address", "Cell", 6),
  column("row", "Row", 22),
  column("column", "Column", 14),
  column("message", "Finding", 44),
  column("found", "Found", 11),
  column("expected", "Expected", 11),
  column("source", "Source", 38),
  column("concession", "Conceded", 18),
];
