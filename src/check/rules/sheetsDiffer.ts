import type { Lineup } from "../../lineup/lineup";
import { equipmentSheet } from "../../sheets/equipmentSheet";
import type { Context, Rule } from "../context";
import type { Finding } from "../finding";

/** What of a lineup stands on a sheet for people to read, and the sheet that it stands on. */
const TOLD: readonly [what: string, sheet: string, part: (lineup: Lineup) => unknown][] = [
  ["basis", "Cover", ({ basis }) => basis],
  ["ratings", "Cover", ({ ratings }) => ratings],
  ["insulation correction", "Cover", ({ insulation }) => insulation],
  ["withstand test", "Cover", ({ withstand }) => withstand],
  [
    "panels and breakers",
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
    (lineup) =>
      equipmentSheet(lineup)
        .rows.map(({ panel, item, value }) => JSON.stringify([panel, item, value]))
        .sort(),
  ],
  [
    "maker's and project's criteria",
    "Criteria",
    ({ criteria }) =>
      criteria
        .map(({ from, quantity, value, document, applies }) =>
          JSON.stringify([from, quantity, value, document, applies ?? "all"]),
        )
        .sort(),
  ],
  [
    "settings of the project",
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
  title: "Sheets that tell another lineup",
  finds:
    "a cover, panels, equipment, criteria or settings sheet that tells another lineup than the records are judged by",
  why: "People read the sheet and the check reads the lineup: they must be the same.",
  satisfies: "the change put into the lineup's description and built onto the workbook",
  quiet:
    "where they agree, whatever the order of rows; for a workbook of somebody's own, which has none of these sheets",
  reads: "book",
  of: [],
  find: ({ lineup, told, tables, snapshot }) =>
    (isOwn(tables, snapshot) ? [] : TOLD).flatMap(([what, sheet, part]): Finding[] =>
      told && same(part(told), part(lineup))
        ? []
        : [
            {
              rule: "sheets-differ",
              weight: "query",
              sheet,
              address: "A1",
              found: what,
              message: `The sheet "${sheet}" tells other ${what} than the workbook was built for and is judged by; put the change into the lineup's description and build it onto the workbook again.`,
            },
          ],
    ),
};

/** Whether every record is read by a map, and none of these sheets is there. */
const isOwn = (tables: Context["tables"], { sheets }: Context["snapshot"]) =>
  tables.every(({ table }) => table.seen) &&
  !TOLD.some(([, told]) => sheets.some(({ name, tables }) => name === told && tables.length > 0));

/** Equal whatever the order in which an object's parts were written. */
const same = (one: unknown, other: unknown) =>
  JSON.stringify(ordered(one)) === JSON.stringify(ordered(other));

const ordered = (value: unknown): unknown =>
  Array.isArray(value)
    ? value.map(ordered)
    : typeof value === "object" && value !== null
      ? Object.entries(value)
          .sort(([one], [other]) => (one < other ? -1 : 1))
          .map(([key, part]) => [key, ordered(part)])
      : value;
