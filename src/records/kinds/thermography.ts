import type { Lineup, Panel } from "../../lineup/lineup";
import { leastLoad } from "../../standards/nfpa70b.1998";
import { coldest } from "../../standards/practice";
import { rises } from "../../standards/thermography";
import { blank, closing, gear, quoted, trail } from "../columns/common";
import { measured, named } from "../columns/measuredColumns";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  isNotApplicable,
  NOT_APPLICABLE,
  type RecordKind,
  type Reference,
  type Row,
} from "../kind";
import { mostOf, sourceOf, sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

/** What a connection is compared with: its like under the same load where there is one, else the air. */
const AGAINST = {
  similar: { header: "Over similar", own: mostOf("temperature rise over similar K") },
  air: { header: "Over air", own: mostOf("temperature rise over air K") },
} as const;
type Against = keyof typeof AGAINST;
const ALL = Object.keys(AGAINST) as readonly Against[];

const riseOf = (against: Against) => `${against}Rise`;

const accepted: readonly Comparison[] = ALL.map(
  (against): Comparison => ({
    value: riseOf(against),
    limit: `${against}Study`,
    lenient: `${against}Wrong`,
    sense: "most",
    // What is too hot at a small load is too hot.
    outright: true,
    when: riseOf(against),
  }),
);
const enough: readonly Comparison[] = [
  { value: "load", limit: "loadLeast", unit: "A", sense: "least" },
  { value: "load", limit: "ratedA", unit: "A", sense: "most" },
];

const degrees = (id: string, header: string, need: "reading" | "condition", help: string): Column =>
  measured(id, header, "°C", {
    accepts: { type: "number", least: -40, most: 400 },
    need,
    help,
  });

const NOT_WORKED_OUT = "not worked out";

/** Whether there is nothing to compare with. */
const hasNone = (cell: CellValue | undefined) => isBlank(cell) || isNotApplicable(cell);

const rise = (against: Against): Column => ({
  id: riseOf(against),
  header: `${AGAINST[against].header} K`,
  role: "computed",
  width: 9,
  format: "0.0",
  above: { value: coldest.value },
  formula: (ref: Reference) => {
    const [hottest, other] = ["hottest", against].map((id) =>
      gear("QUANTITY", ref(id), quoted("°C")),
    );
    return `IF(OR(${blank(ref("hottest"))},${blank(ref(against))},${ref(against)}=${quoted(NOT_APPLICABLE)}),"",IFERROR(${hottest}-${other},"${NOT_WORKED_OUT}"))`;
  },
  value: (row): CellValue => {
    if (isBlank(row.hottest) || hasNone(row[against])) return null;
    const [hottest, other] = [exactly(row.hottest, "°C"), exactly(row[against], "°C")];
    return hottest === undefined || other === undefined ? NOT_WORKED_OUT : hottest - other;
  },
  working: (row) =>
    workedOut(
      row[riseOf(against)],
      `${onPaper(exactly(row.hottest, "°C"))} °C − ${onPaper(exactly(row[against], "°C"))} °C`,
      "K",
    ),
});

/** The rises that count: over the air those of the gear's own standard where a similar spot was read as well. */
const risesFor = (against: Against, row: Row) =>
  against === "air" && typeof row[riseOf("similar")] === "number"
    ? rises.airBesideSimilar
    : rises[against];

const limit = (
  against: Against,
  which: "study" | "wrong",
  header: string,
  help: string,
): Column => ({
  id: `${against}${which === "study" ? "Study" : "Wrong"}`,
  header: `${AGAINST[against].header}: ${header} above`,
  role: "limit",
  width: 10,
  own: AGAINST[against].own,
  help,
  formula: (ref) =>
    against === "air"
      ? `IF(ISNUMBER(${ref(riseOf("similar"))}),${rises.airBesideSimilar[which].value},${rises.air[which].value})`
      : String(rises[against][which].value),
  value: (row) => risesFor(against, row)[which].value,
});

const limits = (against: Against): Column[] => [
  limit(against, "study", "investigate", "Up to this nothing is asked."),
  limit(
    against,
    "wrong",
    "wrong",
    "Between the two a deficiency is probable: neither passed nor failed. The project's own limit stands for both.",
  ),
];

const columns: readonly Column[] = [
  ...named("Place", 20),
  { id: "ratedA", header: "Rated A", role: "given", width: 8, unit: "A" },
  measured("load", "Load A", "A", {
    most: 100_000,
    wave: "any",
    need: "condition",
    help: "Through this place, steady for half an hour and more; of three phases the least. At a busbar what its section carries there.",
  }),
  {
    id: "loadLeast",
    header: "Minimum load A",
    role: "limit",
    width: 9,
    unit: "A",
    value: ({ ratedA }) => (typeof ratedA === "number" ? ratedA * leastLoad.value : null),
  },
  degrees(
    "hottest",
    "Hottest °C",
    "reading",
    "The hottest spot seen there, with the emissivity and the window allowed for; where it was stands in the remarks.",
  ),
  {
    ...degrees(
      "similar",
      "Similar °C",
      "condition",
      "The same spot of another phase or panel under a similar load; blank or n/a where there is none, and the air counts by itself.",
    ),
    needed: () => false,
  },
  degrees(
    "air",
    "Air °C",
    "condition",
    "Of the room, out of the sun and of the gear's own draught.",
  ),
  rise("similar"),
  rise("air"),
  ...ALL.flatMap(limits),
  sources((row, lineup) => [
    ...ALL.map(
      (against) =>
        [
          AGAINST[against].header.toLowerCase(),
          sourceOf(AGAINST[against].own(row, lineup) ?? rises[against].study),
        ] as const,
    ),
    ["over air beside a similar spot", sourceOf(rises.airBesideSimilar.study)],
    ["load", sourceOf(leastLoad)],
    ["colder", sourceOf(coldest)],
  ]),
  ...trail(),
];

/** Places of a panel that carry its current, and what they are rated for. */
const placesOf = ({ designation, breaker, cables }: Panel, { ratings }: Lineup): Row[] => {
  const own = breaker?.ratedA ?? ratings.busbarA;
  return [
    { object: designation, part: "Busbar joints", ratedA: ratings.busbarA },
    ...(breaker ? [{ object: designation, part: "Breaker and contacts", ratedA: own }] : []),
    ...(cables.length > 0
      ? [{ object: designation, part: "Cable terminations", ratedA: own }]
      : []),
  ];
};

/** Hot spots looked for under load, place by place. */
export const thermography: RecordKind<"thermography"> = {
  id: "thermography",
  alsoCalled: [
    "thermograph(?:y|ic survey)",
    "infra-?red (?:survey|scan|inspection)",
    "hot ?spots?",
  ],
  step: "energization",
  onRequest: true,
  sheet: "Thermography",
  table: "GearThermography",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) => lineup.panels.flatMap((panel) => placesOf(panel, lineup)),
  live: () => true,
  voidBy: voidBy(["Bus joint", "Breaker pole", "Cable"]),
  accepted,
  enough,
};
