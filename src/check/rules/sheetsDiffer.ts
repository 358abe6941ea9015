import type { Lineup } from "../../lineup/lineup";
import type { FindingsText } from "../../messages/messages";
import { coverSheet } from "../../sheets/ours/coverSheet";
import { criteriaSheet } from "../../sheets/ours/criteriaSheet";
import { equipmentSheet } from "../../sheets/ours/equipmentSheet";
import { panelSheet } from "../../sheets/ours/panelSheet";
import { settingsSheet } from "../../sheets/ours/settingsSheet";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import { tablesOf } from "../../sheets/snapshot";
import { type Difference, linesDiffer } from "../compare/linesDiffer";
import { noKind, type Rule, shown } from "../context";
import type { Finding } from "../findings/finding";

/** The sheets that show the lineup to people. */
const SHOWING: readonly ((lineup: Lineup) => PlannedSheet)[] = [
  coverSheet,
  panelSheet,
  equipmentSheet,
  criteriaSheet,
  settingsSheet,
];

/** Differences of a sheet that are told one by one; more of them have one cause. */
const FEW = 5;

/** A cover, panels, equipment, criteria or settings sheet that shows another lineup than the one that the records are judged by. */
export const sheetsDiffer: Rule = {
  id: "sheets-differ",
  reads: "book",
  of: noKind,
  find: ({ lineup, told, tables, snapshot, text }) => {
    if (lineup === told) return [];
    const known = new Map(tablesOf(snapshot).map((table) => [table.name, table]));
    const sheets = SHOWING.map((sheetOf) => sheetOf(lineup));
    const isOwn =
      tables.every(({ table }) => table.ownLayout) && !sheets.some(({ table }) => known.has(table));
    return isOwn ? [] : sheets.flatMap((planned) => ofSheet(planned, known, text));
  },
};

function ofSheet(
  planned: PlannedSheet,
  known: ReadonlyMap<string, Parameters<typeof linesDiffer>[1]>,
  text: FindingsText,
): Finding[] {
  const table = known.get(planned.table);
  const says = text.rules["sheets-differ"];
  const at = {
    rule: "sheets-differ",
    weight: "query",
    sheet: table?.sheet ?? planned.sheet,
  } as const;
  if (!table) return [{ ...at, address: "A1", message: says.noSheet(planned.sheet) }];
  const finding = ({ line, header, found, wanted, address }: Difference): Finding => ({
    ...at,
    address,
    row: line,
    column: header,
    message: says.message(line, header, shown(found, text), shown(wanted, text)),
    found: String(found ?? ""),
    expected: String(wanted ?? ""),
  });
  const differences = linesDiffer(planned, table);
  const [first, ...others] = differences.map(finding);
  if (!first || differences.length <= FEW) return differences.map(finding);
  const named = others.slice(0, FEW).map(({ address }) => address);
  return [{ ...first, message: says.further(first.message, others.length, named) }];
}
