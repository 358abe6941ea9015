import type { Lineup } from "../../lineup/lineup";
import { kindFor } from "../../records/kindFor";
import { KINDS } from "../../records/kinds";
import { storedKindWords } from "../../records/kindWords";
import { rowsOf } from "../../records/rowsOf";
import { concessionSheet } from "../ours/concessionSheet";
import { coverSheet } from "../ours/coverSheet";
import { criteriaSheet } from "../ours/criteriaSheet";
import { equipmentSheet } from "../ours/equipmentSheet";
import { historySheet } from "../ours/historySheet";
import { instrumentSheet } from "../ours/instrumentSheet";
import { panelSheet } from "../ours/panelSheet";
import { punchSheet } from "../ours/punchSheet";
import { repairSheet } from "../ours/repairSheet";
import { settingsSheet } from "../ours/settingsSheet";
import { type PlannedSheet, papersOf } from "./plannedSheet";

/** Everything that the record workbook of a lineup holds. */
export interface Plan {
  readonly lineup: Lineup;
  readonly sheets: readonly PlannedSheet[];
}

/** The sheets, tables and rows that exactly this lineup needs. */
export const planFor = (lineup: Lineup): Plan => ({
  lineup,
  sheets: [
    coverSheet(lineup),
    panelSheet(lineup),
    equipmentSheet(lineup),
    ...KINDS.map((kind) => ({
      ...kindFor(kind, lineup),
      ...storedKindWords(kind.id),
      rows: rowsOf(kind, lineup),
    })),
    criteriaSheet(lineup),
    settingsSheet(lineup),
    instrumentSheet(lineup),
    historySheet(),
    repairSheet(),
    punchSheet(),
    concessionSheet(),
  ].map((planned) => ({ ...planned, papers: papersOf(lineup) })),
});
