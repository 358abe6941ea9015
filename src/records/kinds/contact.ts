import { busJoints } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { deviceName, plateLimit } from "../../lineup/plate";
import { contactTestCurrent, jointTestCurrent } from "../../standards/contactTestCurrent";
import { contactSpread, likeJoint, likePole } from "../../standards/practice";
import { closing, PHASES, trail } from "../columns/common";
import {
  enoughCurrent,
  leastTestCurrent,
  microOhmColumns,
  testCurrent,
  withinMaximum,
} from "../columns/microOhmColumns";
import { spreadAccepted, spreadColumn, spreadMostColumn } from "../columns/spreadColumns";
import {
  type CellValue,
  type Column,
  type Comparison,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { asFraction, mostOf, ownOf, sourceOf, sources, stricterOf, TO_TYPE } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const isJoint = (row: Row) => String(row.part).startsWith("Joint");

const plate = (row: Row, lineup: Lineup): OwnLimit | undefined =>
  isJoint(row)
    ? undefined
    : plateLimit(lineup, String(row.object), ({ contactLimit }) => contactLimit);

/** The greatest resistance allowed: a breaker's by its plate, else a criterion of the maker or project. */
const ownLimit = stricterOf(
  "most",
  plate,
  mostOf(
    { name: "joint resistance µΩ", of: isJoint },
    { name: "contact resistance µΩ", of: (row) => !isJoint(row) },
  ),
);
const ownCurrent = ownOf("contact test current A");
const ownSpread = asFraction(mostOf("contact spread %"));

const standardCurrent = (row: Row, { basis }: Lineup) =>
  isJoint(row) ? jointTestCurrent(basis) : contactTestCurrent(basis);

/** Joints are accepted by comparison with similar ones, breakers' poles in American practice alone. */
const isCompared = (row: Row, { basis }: Lineup): boolean => isJoint(row) || basis === "NETA";

/** Likeness says that none differs, not that all are good: above this it asks. */
const likenessAccepted: Comparison = {
  value: "corrected",
  limit: "likeMost",
  unit: "µΩ",
  sense: "most",
  excusable: true,
  insteadOf: "maximum",
  asks: true,
};

const accepted: readonly Comparison[] = [withinMaximum, spreadAccepted, likenessAccepted];
const enough: readonly Comparison[] = [enoughCurrent];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Part", role: "key", width: 16 },
  { id: "pole", header: "Pole", role: "key", width: 7 },
  { id: "ratedA", header: "Rated A", role: "given", width: 8, unit: "A" },
  testCurrent,
  leastTestCurrent(ownCurrent, (row, lineup) => standardCurrent(row, lineup).value),
  ...microOhmColumns,
  {
    id: "maximum",
    header: "Maximum µΩ",
    role: "limit",
    width: 10,
    unit: "µΩ",
    own: ownLimit,
    help: "Where the lineup gives none, type the maker's value here.",
    value: (row) => row.maximum ?? null,
  },
  sources((row, lineup) => [
    [
      "maximum",
      sourceOf(ownLimit(row, lineup)) ||
        (isCompared(row, lineup)
          ? `none given: type the maker's value here; without it compared with its like, ${sourceOf(ownSpread(row, lineup) ?? contactSpread)}`
          : TO_TYPE),
    ],
    ["test A", sourceOf(ownCurrent(row, lineup) ?? standardCurrent(row, lineup))],
  ]),
  {
    id: "alike",
    header: "Compared with",
    role: "given",
    width: 18,
    help: "Poles of one breaker are compared among themselves, joints with all joints of the same rating.",
    value: (row) => alikeOf(row),
  },
  spreadColumn({
    of: "corrected",
    unit: "µΩ",
    by: "alike",
    help: "Above the lowest of its like. More than 50 % asks for investigation; it is not by itself a failure.",
  }),
  spreadMostColumn(ownSpread, isCompared),
  {
    id: "likeMost",
    header: "Alike up to µΩ",
    role: "limit",
    width: 9,
    unit: "µΩ",
    help: "Above it likeness alone accepts nothing: the maker's value is asked for; n/a where the row is not compared.",
    value: (row, lineup) =>
      isCompared(row, lineup) ? (isJoint(row) ? likeJoint : likePole).value : NOT_APPLICABLE,
  },
  ...trail(),
];

/** Contact resistance of each breaker pole, and resistance of each busbar joint between panels. */
export const contact: RecordKind<"contact"> = {
  id: "contact",
  alsoCalled: ["joints?", "micro ?ohm", "crm", "pole resistance"],
  spread: { column: "spread", unit: "%", step: 1, from: ["corrected", "reading"] },
  step: "devices",
  sheet: "Contacts",
  table: "GearContact",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => [
    ...lineup.panels.flatMap(({ designation, breaker }) =>
      breaker ? poles(designation, deviceName(breaker), breaker.ratedA) : [],
    ),
    ...busJoints(lineup).flatMap(({ left, right }) =>
      poles(left.designation, `Joint to ${right.designation}`, lineup.ratings.busbarA),
    ),
  ],
  after: [{ kind: "torque" }],
  voidBy: {
    "Bus joint": { reach: "panel", of: ({ part }) => String(part).startsWith("Joint to ") },
    ...voidBy(["Breaker pole"]),
  },
  accepted,
  enough,
  plot: { value: "corrected", limit: "maximum", unit: "µΩ", log: false },
};

const poles = (object: string, part: string, ratedA: CellValue): Row[] =>
  PHASES.map((pole) => ({ object, part, pole, ratedA }));

/** What a row is compared with: the poles of its breaker, or all joints of its rating. */
const alikeOf = (row: Row): string =>
  isJoint(row) ? `Joints of ${row.ratedA} A` : `${row.object} ${row.part}`;
