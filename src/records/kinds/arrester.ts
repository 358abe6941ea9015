import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { itemLimit } from "../../lineup/plate";
import { answered, closing, PHASES, trail } from "../columns/common";
import { asRead } from "../columns/insulationColumns";
import { limitWhereGiven, measured, named } from "../columns/measuredColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { leastOf, mostOf, ownOf, plateOr, sourceOf, sources, stricterOf } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Arrester = Panel["arresters"][number];

const arresterOf = (row: Row, lineup: Lineup): Arrester | undefined =>
  panelOf(lineup, String(row.object))?.arresters.find(
    ({ designation }) => designation === row.part,
  );
const plate = (pick: (arrester: Arrester) => number | undefined) => (row: Row, lineup: Lineup) => {
  const found = arresterOf(row, lineup);
  return itemLimit(found, found && pick(found));
};
const minimum = stricterOf(
  "least",
  plate(({ insulationMOhm }) => insulationMOhm),
  leastOf("arrester insulation MΩ"),
);
const leakageMost = stricterOf(
  "most",
  plate(({ leakagemA }) => leakagemA),
  mostOf("arrester leakage mA"),
);
const leakageAt = plateOr(
  plate(({ leakagekV }) => leakagekV),
  ownOf("arrester leakage test kV"),
);

const accepted: readonly Comparison[] = [
  { value: "insulation", limit: "minimum", unit: "MΩ", sense: "least", excusable: true },
  { value: "leakage", limit: "leakageMost", unit: "mA", sense: "most", excusable: true },
];
/** Leakage grows steeply with voltage: below the maker's it proves nothing. */
const enough: readonly Comparison[] = [
  // A counter does not run back.
  { value: "counterAfter", limit: "counterBefore", sense: "least", when: "counterBefore" },
  { value: "leakAt", limit: "leakageAt", unit: "kV", sense: "least", excusable: true },
];

const count = (id: string, header: string): Column => ({
  id,
  header,
  role: "entry",
  width: 9,
  accepts: { type: "number", least: 0, most: 1_000_000 },
});

const columns: readonly Column[] = [
  ...named("Arrester", 14),
  { id: "phase", header: "Phase", role: "key", width: 7 },
  {
    id: "insulationRead",
    header: "Insulation MΩ",
    role: "entry",
    width: 12,
    unit: "MΩ",
    accepts: { type: "reading" },
    need: "reading",
    unless: "minimum",
    help: 'At the DC voltage that the maker names, its earth lead off: a number in MΩ, or as written: "> 10 GΩ".',
  },
  asRead("insulation", "R MΩ", "insulationRead"),
  limitWhereGiven("minimum", "Minimum MΩ", "MΩ", minimum),
  measured("leakAt", "Leakage at kV", "kV", {
    most: 100,
    wave: "any",
    need: "condition",
    unless: "leakageMost",
    help: "With the wave that the maker names; never above his voltage.",
  }),
  limitWhereGiven("leakageAt", "Maker's kV", "kV", leakageAt),
  measured("leakage", "Leakage mA", "mA", { unless: "leakageMost" }),
  limitWhereGiven("leakageMost", "Maximum mA", "mA", leakageMost),
  answered("earth", "Earth lead", ["Connected", "Not connected"], {
    width: 13,
    help: "Back on after the test, by its shortest way.",
  }),
  { id: "hasCounter", header: "Counter", role: "given", width: 8 },
  answered("counts", "Counter tried", ["Counts", "Does not count"], {
    width: 13,
    asked: "hasCounter",
    needed: ({ hasCounter }) => hasCounter !== null,
    help: "With the maker's impulse tester.",
  }),
  count("counterBefore", "Counter before"),
  count("counterAfter", "Counter as left"),
  sources((row, lineup) => [
    ["insulation", sourceOf(minimum(row, lineup)) || "none given: not judged by it"],
    ["leakage", sourceOf(leakageMost(row, lineup)) || "none given: not judged by it"],
  ]),
  ...trail(),
];

/** Surge arresters: insulation, leakage at the maker's voltage, earth lead and counter. */
export const arrester: RecordKind<"arrester"> = {
  id: "arrester",
  alsoCalled: ["surge arresters?", "lightning arresters?"],
  step: "devices",
  sheet: "Arresters",
  table: "GearArrester",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, arresters }) =>
      arresters.flatMap(({ designation, counter }) =>
        PHASES.map(
          (phase): Row => ({
            object,
            part: designation,
            phase,
            hasCounter: counter ? "fitted" : null,
          }),
        ),
      ),
    ),
  voidBy: voidBy(["Surge arrester"]),
  accepted,
  enough,
};
