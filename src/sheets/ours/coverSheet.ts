import { FIELDS, LISTS, labelOf } from "../../lineup/fields";
import type { Lineup } from "../../lineup/lineup";
import type { CellValue, Column, Row } from "../../records/kind";
import { storedKindWords } from "../../records/kindWords";
import type { PlannedSheet } from "../plan/plannedSheet";

export const COVER_TABLE = "GearProject";

export const COVER_COLUMNS: readonly Column[] = [
  { id: "item", header: "Item", role: "key", width: 34 },
  { id: "value", header: "Value", role: "given", width: 60 },
];

/** Items of the cover, each with its place in the lineup, so that the lineup can be read back from it: every fact that stands in no list. */
export const COVER_ITEMS: readonly (readonly [item: string, path: string])[] = FIELDS.filter(
  ({ path, holds }) => holds !== "weights" && !LISTS.some((list) => path.startsWith(`${list}.`)),
).flatMap(({ path }) =>
  path === "phases"
    ? [0, 1, 2].map((at) => [`Phase ${at + 1}`, `${path}.${at}`] as const)
    : [[labelOf(path) ?? path, path] as const],
);

/** Project, ratings and basis of the lineup, and what the project leaves out. */
export function coverSheet(lineup: Lineup): PlannedSheet {
  const { project } = lineup;
  const items = COVER_ITEMS.flatMap(([item, path]): Row[] => {
    const value = path
      .split(".")
      .reduce<unknown>(
        (found, key) => (found as Record<string, unknown> | undefined)?.[key],
        lineup,
      );
    return ["string", "number", "boolean"].includes(typeof value)
      ? [{ item, value: value as CellValue }]
      : [];
  });
  return {
    sheet: "Cover",
    table: COVER_TABLE,
    title: "Test records of a medium-voltage switchgear lineup",
    purpose: `${project.name}, ${project.site}. Maker's and project's own criteria come before the standard's.`,
    cautions: [
      "These records evaluate readings. They never say that equipment is safe to energize: that is decided by licensed people under the local code, the site's permit system and the maker's instructions.",
    ],
    columns: COVER_COLUMNS,
    rows: [
      ...items,
      ...project.drawings.map(({ number, revision, title }) => ({
        item: `Drawing ${number}`,
        value: `revision ${revision}${title ? `, ${title}` : ""}`,
      })),
      ...lineup.leaveOut.map(({ kind, reason, document }) => ({
        item: `Left out: ${storedKindWords(kind).title}`,
        value: `${reason}${document ? ` (${document})` : ""}`,
      })),
    ],
  };
}
