import type { Lineup } from "../../lineup/lineup";
import { type Breaker, deviceName, plateLimit } from "../../lineup/plate";
import { coilRange } from "../../standards/coilRange";
import { blank, closing, gear, quoted, trail } from "../columns/common";
import { figure } from "../figure";
import { type Column, type Comparison, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources, TO_TYPE } from "../limits";
import { verdictBy } from "../verdict";

const NOT_COMPUTED = "not computed";

type Operation = "closing" | "opening";
type End = "least" | "most";

const plate = (pick: (breaker: Breaker) => number | undefined) => (row: Row, lineup: Lineup) =>
  plateLimit(lineup, String(row.object), pick);
const charging = plate(({ chargingS }) => chargingS);
const coilPlate = {
  closing: {
    least: plate(({ closingV }) => closingV?.least),
    most: plate(({ closingV }) => closingV?.most),
  },
  opening: {
    least: plate(({ openingV }) => openingV?.least),
    most: plate(({ openingV }) => openingV?.most),
  },
};
const standard = (row: Row, operation: Operation, { basis }: Lineup) =>
  coilRange(Number(row.ratedV), { operation, wave: "DC", basis });

const COILS = [
  ["closing", "Closing coil"],
  ["opening", "Opening release"],
] as const;

/** A coil works at the least voltage of its range, and at the most. */
const accepted: readonly Comparison[] = [
  ...COILS.flatMap(([coil]): Comparison[] => [
    { value: `${coil}Low`, limit: `${coil}Least`, unit: "V", sense: "most" },
    { value: `${coil}High`, limit: `${coil}Most`, unit: "V", sense: "least" },
  ]),
  { value: "charged", limit: "chargedMost", unit: "s", sense: "most", when: "chargedMost" },
  { value: "counted", limit: "made", sense: "least", when: "counted" },
  { value: "counted", limit: "made", sense: "most", when: "counted" },
];

const worked = (id: string, header: string, end: End): Column => ({
  id,
  header,
  role: "entry",
  width: 10,
  unit: "V",
  accepts: { type: "number", least: 0, most: 500 },
  need: "reading",
  help: `At the coil's terminals while it draws its current: the ${end === "least" ? "lowest" : "highest"} at which it was seen to work each time.`,
});

const range = (id: string, header: string, operation: Operation, end: End): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  unit: "V",
  format: "0.0##",
  own: coilPlate[operation][end],
  formula: (ref, { basis }) =>
    `IFERROR(${gear("COILLIMIT", ref("ratedV"), quoted(operation), quoted(end), '"DC"', quoted(basis))},"")`,
  value: (row, lineup) => {
    const found = standard(row, operation, lineup);
    return found.ok ? found.value.value[end] : null;
  },
});

const counter = (
  id: string,
  header: string,
  need: "trail" | "condition",
  help: string,
): Column => ({
  id,
  header,
  role: "entry",
  width: 9,
  accepts: { type: "number", least: 0 },
  need,
  needed: (row) => id !== "made" || !isBlank(row.counterBefore),
  help,
});

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Mechanism", role: "key", width: 16 },
  { id: "ratedV", header: "Rated control V", role: "given", width: 9, unit: "V" },
  ...COILS.flatMap(([coil, name]): Column[] => [
    worked(`${coil}Low`, `${name} worked at V, low`, "least"),
    range(`${coil}Least`, `${name}: has to work at V, least`, coil, "least"),
    worked(`${coil}High`, `${name} worked at V, high`, "most"),
    range(`${coil}Most`, `${name}: has to work at V, most`, coil, "most"),
  ]),
  {
    id: "charged",
    header: "Spring charged in s",
    role: "entry",
    width: 9,
    unit: "s",
    accepts: { type: "number", least: 0, most: 600 },
    need: "condition",
    needed: (row, lineup) => !isBlank(row.chargedMost) || charging(row, lineup) !== undefined,
    help: "By the motor at rated voltage, from discharged to the end of its run.",
  },
  {
    id: "chargedMost",
    header: "Most s",
    role: "limit",
    width: 8,
    unit: "s",
    own: charging,
    help: "The maker's; where neither lineup nor sheet gives it, the time is only recorded.",
    value: (row) => row.chargedMost ?? null,
  },
  sources((row, lineup) => [
    ...COILS.map(
      ([coil, name]) =>
        [
          name,
          sourceOf(coilPlate[coil].least(row, lineup)) || rangeSource(row, coil, lineup),
        ] as const,
    ),
    ["spring", sourceOf(charging(row, lineup)) || TO_TYPE],
  ]),
  counter(
    "counterBefore",
    "Counter before",
    "trail",
    "Operation counter before the first operation of this row.",
  ),
  counter("counterAfter", "Counter after", "trail", "Operation counter after the last."),
  counter(
    "made",
    "Operations made",
    "condition",
    "As many as the counter should have counted between its two readings: most count closings alone.",
  ),
  {
    id: "counted",
    header: "Counted",
    role: "computed",
    width: 9,
    formula: (ref) =>
      `IF(AND(${blank(ref("counterBefore"))},${blank(ref("counterAfter"))}),"",IF(AND(ISNUMBER(${ref("counterBefore")}),ISNUMBER(${ref("counterAfter")})),${ref("counterAfter")}-${ref("counterBefore")},"${NOT_COMPUTED}"))`,
    value: ({ counterBefore, counterAfter }) => {
      if (isBlank(counterBefore) && isBlank(counterAfter)) return null;
      return typeof counterBefore === "number" && typeof counterAfter === "number"
        ? counterAfter - counterBefore
        : NOT_COMPUTED;
    },
    working: ({ counterBefore, counterAfter, counted }) =>
      typeof counted === "number"
        ? `${figure(counterAfter)} − ${figure(counterBefore)} = ${figure(counted)}`
        : "",
  },
  ...trail(),
];

function rangeSource(row: Row, operation: Operation, lineup: Lineup): string {
  const found = standard(row, operation, lineup);
  return found.ok
    ? sourceOf({ value: found.value.value.least, source: found.value.source })
    : found.reason;
}

/** Coils at the ends of their range, charging of the spring, and what the operation counter counted. */
export const mechanism: RecordKind = {
  id: "mechanism",
  title: "Coils, spring and counter of breakers",
  sheet: "Mechanism",
  table: "GearMechanism",
  purpose:
    "Closing coil and opening release at the least and the greatest voltage that they have to work at, the time that the motor takes to charge the spring, and the operation counter against the operations made.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; the breaker is in its test position or out of its panel, with every other supply of it locked off.",
    "A charged spring moves without warning: keep hands and tools out, and discharge it (close, open) before work on the mechanism.",
    "Raise the voltage no higher and leave it on no longer than the maker allows; let coils cool.",
    "Block inter-tripping and whatever else its auxiliary contacts would start. The maker's instruction and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }): Row[] =>
      // Coils of contactors follow a standard of their own, and a contactor has no spring to charge.
      breaker && !breaker.device
        ? [
            {
              object: designation,
              part: deviceName(breaker),
              ratedV: lineup.ratings.controlV ?? null,
            },
          ]
        : [],
    ),
  accepted,
  enough: [],
};
