import type { Lineup } from "../../lineup/lineup";
import type { FindingsText } from "../../messages/messages";
import { equipmentOf } from "../../sheets/ours/equipmentSheet";
import { type Context, noKind, type Rule } from "../context";
import type { Finding } from "../finding";

type Part = keyof FindingsText["rules"]["sheets-differ"]["parts"];

/** What of a lineup stands on a sheet for people to read, and the sheet that it stands on. */
const TOLD: readonly [what: Part, sheet: string, part: (lineup: Lineup) => unknown][] = [
  ["basis", "Cover", ({ basis }) => basis],
  ["ratings", "Cover", ({ ratings }) => ratings],
  ["insulation", "Cover", ({ insulation }) => insulation],
  ["withstand", "Cover", ({ withstand }) => withstand],
  [
    "panels",
    "Panels",
    ({ panels }) =>
      panels.map(({ designation, type, section, massKg, breaker }) => [
        designation,
        type,
        section,
        massKg,
        breaker?.designation,
        breaker?.medium,
        breaker?.ratedA,
      ]),
  ],
  [
    "equipment",
    "Equipment",
    ({ panels }) =>
      Object.fromEntries(panels.map((panel) => [panel.designation, equipmentOf(panel)])),
  ],
  [
    "criteria",
    "Criteria",
    ({ criteria }) =>
      criteria
        .map(({ from, quantity, value, document, applies }) =>
          JSON.stringify([from, quantity, value, document, applies ?? "all"]),
        )
        .sort(),
  ],
  [
    "settings",
    "Settings",
    ({ project: { drawings }, leaveOut, inspectionPoints, checkItems, ruleWeights = {} }) => [
      drawings,
      leaveOut,
      inspectionPoints,
      checkItems,
      ruleWeights,
    ],
  ],
];

/** A cover, panels, equipment or criteria sheet that tells another lineup than the one that the records are judged by. */
export const sheetsDiffer: Rule = {
  id: "sheets-differ",
  reads: "book",
  of: noKind,
  find: ({ lineup, told, tables, snapshot, text }) => {
    const { parts, message } = text.rules["sheets-differ"];
    return (isOwn(tables, snapshot) ? [] : TOLD).flatMap(([what, sheet, part]): Finding[] =>
      told && same(part(told), part(lineup))
        ? []
        : [
            {
              rule: "sheets-differ",
              weight: "query",
              sheet,
              address: "A1",
              found: what,
              message: message(sheet, parts[what]),
            },
          ],
    );
  },
};

/** Whether every record is read by a map, and none of these sheets is there. */
const isOwn = (tables: Context["tables"], { sheets }: Context["snapshot"]) =>
  tables.every(({ table }) => table.ownLayout) &&
  !TOLD.some(([, told]) => sheets.some(({ name, tables }) => name === told && tables.length > 0));

/** Equal whatever the order in which an object's parts were written; what is empty is as good as not there. */
function same(one: unknown, other: unknown): boolean {
  if (one === other) return true;
  const [these, those] = [partsOf(one), partsOf(other)];
  if (!these || !those) return false;
  for (const key in these) if (!same(these[key], those[key])) return false;
  for (const key in those) if (!(key in these) && !same(undefined, those[key])) return false;
  return true;
}

/** What a whole is made of; undefined for a number or a text. */
const partsOf = (whole: unknown = {}): Readonly<Record<string, unknown>> | undefined =>
  typeof whole === "object" ? ((whole as Record<string, unknown>) ?? {}) : undefined;
