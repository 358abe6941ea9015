import type { Lineup } from "../../lineup/lineup";
import type { CellValue, Column, Row } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import type { PlannedSheet } from "../plannedSheet";

export const COVER_TABLE = "GearProject";

export const COVER_COLUMNS: readonly Column[] = [
  { id: "item", header: "Item", role: "key", width: 34 },
  { id: "value", header: "Value", role: "given", width: 60 },
];

/** Items of the cover, each with its place in the lineup, so that the lineup can be read back from it. */
export const COVER_ITEMS = [
  ["Note", "note"],
  ["Project", "project.name"],
  ["Project number", "project.number"],
  ["Site", "project.site"],
  ["Specification", "project.specification"],
  ["Specification, latest approved revision", "project.specificationRevision"],
  ["Basis of acceptance", "basis"],
  ["Tests are for", "purpose"],
  ["Edition of IEC 62271-1", "editions.IEC 62271-1"],
  ["Edition of IEC 60502-2", "editions.IEC 60502-2"],
  ["Edition of ANSI/NETA", "editions.ANSI/NETA"],
  ["Rated voltage kV", "ratings.voltagekV"],
  ["Operating voltage kV", "ratings.operatingkV"],
  ["Frequency Hz", "ratings.frequencyHz"],
  ["Busbar current A", "ratings.busbarA"],
  ["Short-time current kA", "ratings.shortTimekA"],
  ["Short time s", "ratings.shortTimeS"],
  ["Control voltage V", "ratings.controlV"],
  ["Control supply", "ratings.controlKind"],
  ["Control wire rated V", "ratings.controlWireV"],
  ["Rated power-frequency withstand kV", "ratings.powerFrequencykV"],
  ["Rated impulse withstand kV", "ratings.impulsekV"],
  ["Altitude m", "ratings.altitudeM"],
  ["Insulation: correction", "insulation.correction"],
  ["Insulation: base temperature °C", "insulation.baseC"],
  ["Withstand: wave", "withstand.wave"],
  ["Withstand: duration s", "withstand.seconds"],
  ["Withstand: path in air m (corrected to the air)", "withstand.gapM"],
  ["Withstand: internal insulation in parallel", "withstand.parallelInternal"],
  ["Phase 1", "phases.0"],
  ["Phase 2", "phases.1"],
  ["Phase 3", "phases.2"],
  ["Decision rule", "decisionRule"],
] as const;

const titleOf = (id: string) => KINDS.find((kind) => kind.id === id)?.title ?? id;

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
        item: `Left out: ${titleOf(kind)}`,
        value: `${reason}${document ? ` (${document})` : ""}`,
      })),
    ],
  };
}
