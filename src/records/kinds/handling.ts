import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { panelOf } from "../../lineup/panelOf";
import { serialDay } from "../../quantities/dates";
import { answered, blank, closing, signed } from "../columns/common";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources, TO_TYPE } from "../limits";
import { verdictBy } from "../verdict";

const NOT_KNOWN = "not known";

const packed = (row: Row, lineup: Lineup): OwnLimit | undefined => {
  const mass = panelOf(lineup, String(row.object))?.massKg;
  return mass === undefined ? undefined : { from: "maker", value: mass, document: "packing list" };
};

const accepted: readonly Comparison[] = [
  { value: "capacity", limit: "mass", unit: "kg", sense: "least" },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  {
    id: "mass",
    header: "Mass kg",
    role: "limit",
    width: 9,
    unit: "kg",
    own: packed,
    help: "As shipped, by the packing list; where the lineup gives none, type it here.",
    value: (row) => row.mass ?? null,
  },
  {
    id: "gear",
    header: "Lifting or moving gear",
    role: "entry",
    width: 20,
    accepts: { type: "text" },
    need: "trail",
    help: "Its number: crane, truck, slings, skates.",
  },
  {
    id: "capacity",
    header: "Capacity kg",
    role: "entry",
    width: 9,
    unit: "kg",
    accepts: { type: "number", least: 0, most: 200000 },
    need: "reading",
    help: "The least along the chain from hook to panel, at the reach and sling angle used, less spreader and slings.",
  },
  {
    id: "gearDue",
    header: "Gear inspected until",
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
    need: "condition",
    help: "Until when the last inspection of the gear holds; of several, the earliest.",
  },
  answered("condition", "Condition on arrival", ["Sound", "Damaged"], {
    help: "Packing, enclosure, doors, instruments. Damaged: photograph, report to carrier and maker, and say in the remarks.",
  }),
  answered("indicator", "Shock and tilt indicators", ["Not tripped", "Tripped", "None fitted"], {
    width: 12,
    also: ["None fitted"],
  }),
  ...signed().map(
    (column): Column =>
      column.id === "date"
        ? { ...column, need: "condition", help: "Day on which it was lifted or moved." }
        : column,
  ),
  answered("gearSound", "Gear in date", ["Yes", "No"], {
    role: "computed",
    need: undefined,
    formula: (ref) =>
      `IF(OR(${blank(ref("gearDue"))},${blank(ref("date"))}),"",IF(AND(ISNUMBER(${ref("gearDue")}),ISNUMBER(${ref("date")})),IF(${ref("date")}<${ref("gearDue")}+1,"Yes","No"),"${NOT_KNOWN}"))`,
    value: ({ gearDue, date }) => {
      if (isBlank(gearDue) || isBlank(date)) return null;
      return typeof gearDue === "number" && typeof date === "number"
        ? date < gearDue + 1
          ? "Yes"
          : "No"
        : NOT_KNOWN;
    },
    working: ({ gearDue, date, gearSound }) =>
      typeof gearDue === "number" && typeof date === "number"
        ? `moved on ${serialDay(date)}, gear inspected until ${serialDay(gearDue)}: ${gearSound === "Yes" ? "in date" : "lapsed"}`
        : "",
  }),
  sources((row, lineup) => [["mass", sourceOf(packed(row, lineup)) || TO_TYPE]]),
];

/** Each panel's way from the truck to its place: what it was lifted with, and how it arrived. */
export const handling: RecordKind<"handling"> = {
  id: "handling",
  step: "receipt",
  sheet: "Handling",
  table: "GearHandling",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: ({ panels }) => panels.map(({ designation }): Row => ({ object: designation })),
  minor: () => true,
  accepted,
  enough: [],
};
