import type { Lineup } from "../lineup/lineup";
import type { Column, Row } from "../records/kind";
import type { PlannedSheet } from "./plannedSheet";

const COLUMNS: readonly Column[] = [
  { id: "item", header: "Item", role: "key", width: 30 },
  { id: "value", header: "Value", role: "given", width: 60 },
];

/** Project, ratings and basis of the lineup. */
export function coverSheet(lineup: Lineup): PlannedSheet {
  const { project, ratings, basis, insulation, withstand, note } = lineup;
  const items: [string, string | number | undefined][] = [
    ["Note", note],
    ["Project", project.name],
    ["Project number", project.number],
    ["Site", project.site],
    ["Specification", project.specification],
    ...project.drawings.map(({ number, revision, title }): [string, string] => [
      `Drawing ${number}`,
      `revision ${revision}${title ? `, ${title}` : ""}`,
    ]),
    ["Basis of acceptance", `${basis}; maker's and project's own criteria come first`],
    ["Rated voltage kV", ratings.voltagekV],
    ["Operating voltage kV", ratings.operatingkV],
    ["Frequency Hz", ratings.frequencyHz],
    ["Busbar current A", ratings.busbarA],
    ["Short-time current kA", ratings.shortTimekA],
    ["Short time s", ratings.shortTimeS],
    ["Control voltage V DC", ratings.controlV],
    ["Altitude m", ratings.altitudeM],
    [
      "Insulation correction",
      insulation.correction === "none"
        ? "none"
        : `${insulation.correction}, to ${insulation.baseC} °C`,
    ],
    [
      "Withstand test",
      `${withstand.wave}, ${withstand.seconds} s, ${
        withstand.gapM === undefined
          ? "not corrected to the air of the day"
          : `corrected to the air of the day over ${withstand.gapM} m`
      }`,
    ],
  ];
  return {
    sheet: "Cover",
    table: "GearProject",
    title: "Test records of a medium-voltage switchgear lineup",
    purpose: `${project.name}, ${project.site}`,
    cautions: [
      "These records evaluate readings. They never say that equipment is safe to energize: that is decided by licensed people under the local code, the site's permit system and the maker's instructions.",
    ],
    columns: COLUMNS,
    rows: items.flatMap(([item, value]): Row[] => (value === undefined ? [] : [{ item, value }])),
  };
}
