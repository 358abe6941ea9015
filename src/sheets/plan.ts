import type { Lineup } from "../lineup/lineup";
import { KINDS } from "../records/kinds";
import { rowsOf } from "../records/rowsOf";
import { concessionSheet } from "./concessionSheet";
import { coverSheet } from "./coverSheet";
import { criteriaSheet } from "./criteriaSheet";
import { equipmentSheet } from "./equipmentSheet";
import { historySheet } from "./historySheet";
import { instrumentSheet } from "./instrumentSheet";
import { panelSheet } from "./panelSheet";
import type { PlannedSheet } from "./plannedSheet";
import { settingsSheet } from "./settingsSheet";

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
    ...KINDS.map((kind) => ({ ...kind, rows: rowsOf(kind, lineup) })),
    criteriaSheet(lineup),
    settingsSheet(lineup),
    instrumentSheet(lineup),
    historySheet(),
    concessionSheet(),
  ],
});
