import { absorptionRatio, polarizationIndex } from "../../engineering/ratios";
import { busSections } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { ownCriterion } from "../../lineup/ownCriterion";
import { insulationTestVoltage } from "../../standards/insulationTestVoltage";
import { blank, closing, gear, PHASES, quoted, trail } from "../columns/common";
import {
  insulationEnough,
  type Limit,
  limitSource,
  testVoltageColumns,
} from "../columns/insulationColumns";
import { ratio } from "../columns/insulationRatio";
import { figure } from "../figure";
import {
  type CellValue,
  type Column,
  type Comparison,
  type Contradiction,
  isBlank,
  NOT_APPLICABLE,
  type RecordKind,
  type Row,
} from "../kind";
import { leastOf, ownOf, sourceOf, sources } from "../limits";
import { chargedMinutes } from "../minutes";
import { onPaper, workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const INDEX = "polarization index";
const RATIO = "absorption ratio";

/** The project asks for a curve of what it sets a least index or ratio for; nothing else needs one. */
const isAsked = (lineup: Lineup, object: string) =>
  [INDEX, RATIO].some((quantity) => ownCriterion(lineup, quantity, object));

const testVoltage: Limit = {
  own: ownOf("insulation test voltage V"),
  standard: (lineup, row) => insulationTestVoltage(Number(row.ratedkV), lineup),
  formula: (ref, lineup) =>
    `IFERROR(${gear("IRTESTVOLTAGE", ref("ratedkV"), quoted(lineup.basis))},"")`,
};

const accepted: readonly Comparison[] = [
  { value: "polarization", limit: "indexLeast", sense: "least", excusable: true },
  { value: "absorption", limit: "ratioLeast", sense: "least", excusable: true },
];
const enough: readonly Comparison[] = [insulationEnough];

/** A reading after some time; one that only a ratio needs says by `asked` which limit asks for that. */
const after = (
  id: string,
  time: string,
  need?: "reading" | "condition",
  asked?: string,
): Column => ({
  id,
  header: `After ${time} MΩ`,
  role: "entry",
  width: 11,
  unit: "MΩ",
  accepts: { type: "reading" },
  ...(need ? { need } : { help: "For the curve; may stay blank." }),
  ...(asked ? { unless: asked } : {}),
});

const least = (id: string, header: string, quantity: string): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  own: leastOf(quantity),
  help: "The project's own; n/a where it sets none.",
  value: (): CellValue => NOT_APPLICABLE,
});

const columns: readonly Column[] = [
  { id: "object", header: "Panel or section", role: "key", width: 15 },
  { id: "part", header: "Part", role: "key", width: 13 },
  { id: "combination", header: "Combination", role: "key", width: 11 },
  { id: "ratedkV", header: "Rated kV", role: "given", width: 6, unit: "kV" },
  ...testVoltageColumns(testVoltage, { help: "Held steady over the whole ten minutes." }),
  after("s15", "15 s"),
  after("s30", "30 s", "condition", "ratioLeast"),
  after("s45", "45 s"),
  after("min1", "1 min", "reading"),
  after("min2", "2 min"),
  after("min3", "3 min"),
  after("min5", "5 min"),
  after("min10", "10 min", "condition", "indexLeast"),
  {
    id: "temperature",
    header: "Temperature °C",
    role: "entry",
    takesFirst: "temperature",
    width: 12,
    unit: "°C",
    accepts: { type: "number", least: -40, most: 120 },
    need: "trail",
    help: "Of the insulation. A ratio of two readings of one test is not corrected.",
  },
  {
    id: "absorption",
    header: "Absorption ratio",
    role: "computed",
    width: 10,
    format: "0.00",
    help: "1 min over 30 s. It comes from windings and informs; it does not accept switchgear.",
    formula: (ref) =>
      `IF(OR(${blank(ref("s30"))},${blank(ref("min1"))}),"",IFERROR(${gear("ABSORPTION", ref("s30"), ref("min1"))},"n/a"))`,
    value: ratio(absorptionRatio, "s30", "min1"),
    working: ({ s30, min1, absorption }) =>
      workedOut(absorption, `${onPaper(min1)} MΩ ÷ ${onPaper(s30)} MΩ`),
  },
  least("ratioLeast", "Minimum ratio", RATIO),
  {
    id: "polarization",
    header: "Polarization index",
    role: "computed",
    width: 36,
    format: "0.00",
    help: "10 min over 1 min. It comes from windings and informs; it does not accept switchgear.",
    formula: (ref) =>
      `IF(OR(${blank(ref("min1"))},${blank(ref("min10"))}),"",IFERROR(${gear("POLARIZATION", ref("min1"), ref("min10"))},"n/a"))`,
    value: ratio(polarizationIndex, "min1", "min10"),
    working: ({ min1, min10, polarization }) =>
      workedOut(polarization, `${onPaper(min10)} MΩ ÷ ${onPaper(min1)} MΩ`),
  },
  least("indexLeast", "Minimum index", INDEX),
  sources((row, lineup) => [
    ["index", sourceOf(leastOf(INDEX)(row, lineup)) || "none set"],
    ["ratio", sourceOf(leastOf(RATIO)(row, lineup)) || "none set"],
    ["test V", limitSource(testVoltage, row, lineup)],
  ]),
  ...trail(),
];

const connectionOf = ({ object, part, combination }: Row): string =>
  `${object}\u0000${part}\u0000${combination}`;

/** Two readings of one connection on one day lie no further apart, humidity and leads included: common practice, no source. */
const APART = 10;
/** At one voltage, on one day, the same connection reads nearly the same (common practice, no source). */
const APART_ALIKE = 2;

/** What one minute gave here and in the record of insulation, on one day. */
function otherReading(row: Row, other: Row): Contradiction | undefined {
  const [here, there] = [exactly(row.min1, "MΩ"), exactly(other.reading, "MΩ")];
  if (here === undefined || there === undefined || !(here > 0) || !(there > 0)) return undefined;
  const day = ({ date }: Row) => (typeof date === "number" ? Math.floor(date) : undefined);
  if (day(row) === undefined || day(row) !== day(other)) return undefined;
  const most = row.testVoltage === other.testVoltage ? APART_ALIKE : APART;
  return Math.max(here / there, there / here) > most
    ? {
        column: "min1",
        why: "reading",
        found: `${figure(here)} MΩ`,
        other: `${figure(there)} MΩ`,
      }
    : undefined;
}

/** The curve of a row, by the seconds after which each point is read. */
const POINTS: readonly (readonly [seconds: number, id: string])[] = [
  [15, "s15"],
  [30, "s30"],
  [45, "s45"],
  [60, "min1"],
  [120, "min2"],
  [180, "min3"],
  [300, "min5"],
  [600, "min10"],
];

/** Insulation resistance over ten minutes, where the project sets a least index or ratio. */
export const indexCurve: RecordKind<"indexCurve"> = {
  id: "indexCurve",
  alsoCalled: ["polari[sz]ation index", "absorption ratio"],
  step: "insulation",
  sheet: "Insulation over time",
  table: "GearIndexCurve",
  curve: {
    points: POINTS,
    along: "Time, s",
    upward: "Insulation resistance, MΩ",
    unit: "MΩ",
  },
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => {
    const rows = (object: string, part: string): Row[] =>
      isAsked(lineup, object)
        ? PHASES.map((phase) => ({
            object,
            part,
            combination: `${phase}-E`,
            ratedkV: lineup.ratings.voltagekV,
          }))
        : [];
    return [
      ...busSections(lineup).flatMap((section) => rows(section, "Busbar")),
      ...lineup.panels.flatMap(({ designation, breaker }) =>
        breaker ? rows(designation, "Circuit") : [],
      ),
    ];
  },
  against: [
    {
      kind: "insulation",
      own: connectionOf,
      other: (row) => (row.stage === "before" ? connectionOf(row) : undefined),
      contradiction: otherReading,
    },
  ],
  voidBy: voidBy(["Main insulation"]),
  minutes: (row) =>
    chargedMinutes(Math.max(0, ...POINTS.map(([s, id]) => (isBlank(row[id]) ? 0 : s))) / 60),
  accepted,
  enough,
  stress: [{ value: "testVoltage", limit: "testVoltageLeast", share: 0.1, givenOnly: true }],
};
