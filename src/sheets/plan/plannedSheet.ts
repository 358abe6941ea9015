import type { Lineup } from "../../lineup/lineup";
import type { Column, Row } from "../../records/kind";

/** Paper of ISO 216 (A4, A3), or of American offices (Letter, Tabloid). */
export type Papers = "ISO" | "American";

/** The paper that a lineup's records are printed on, by the practice that they follow. */
export const papersOf = ({ basis }: Pick<Lineup, "basis">): Papers =>
  basis === "NETA" ? "American" : "ISO";

/** One sheet of the record workbook, with its one table. */
export interface PlannedSheet {
  readonly sheet: string;
  readonly table: string;
  readonly title: string;
  readonly purpose: string;
  readonly cautions: readonly string[];
  readonly columns: readonly Column[];
  /** Keys and givens of each row; entries are blank. */
  readonly rows: readonly Row[];
  /** ISO where nothing is said. */
  readonly papers?: Papers;
}
