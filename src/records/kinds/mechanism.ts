import type { Lineup } from "../../lineup/lineup";
import { type Breaker, deviceName, plateLimit } from "../../lineup/plate";
import { storedWords } from "../../messages/told";
import { coilRange } from "../../standards/coilRange";
import { blank, closing, gear, NOT_COMPUTED, quoted, trail } from "../columns/common";
import { closingSupplyOf, openingSupplyOf } from "../columns/controlSupply";
import { figure } from "../figure";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type Own,
  type RecordKind,
  type Reference,
  type Row,
} from "../kind";
import { mostOf, sourceOf, sources, stricterOf, strictestOf, TO_TYPE } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Operation = "closing" | "opening";
type End = "least" | "most";

/** What a row is about: both coils of a breaker, or the second trip coil that it has beside them. */
const BOTH = "closing and opening";
const SECOND = "second trip coil";

/** Whether a row tries this coil. */
const tries = (row: Row, operation: Operation): boolean =>
  operation === "closing" ? isOf(row, BOTH) : isOf(row, BOTH) || isOf(row, SECOND);
const isOf = ({ coil }: Row, what: string) => String(coil ?? BOTH).toLowerCase() === what;

const plate = (pick: (breaker: Breaker) => number | undefined) => (row: Row, lineup: Lineup) =>
  plateLimit(lineup, String(row.object), pick);

const charging = stricterOf(
  "most",
  (row, lineup) => (isOf(row, BOTH) ? plate(({ chargingS }) => chargingS)(row, lineup) : undefined),
  mostOf({ name: "spring charging s", of: (row) => isOf(row, BOTH) }),
);

/** Voltages of a coil that the plate gives, or the maker or project in the lineup's criteria. */
const ownCoil = (operation: Operation, end: End): Own => {
  const ofPlate = plate(
    (breaker) => (operation === "closing" ? breaker.closingV : breaker.openingV)?.[end],
  );
  // Who asks for work over a wider range asks for more.
  const narrower = end === "least" ? "most" : "least";
  return stricterOf(
    narrower,
    (row, lineup) => (tries(row, operation) ? ofPlate(row, lineup) : undefined),
    strictestOf(narrower, {
      name: `${operation === "closing" ? "closing coil" : "opening release"} ${end} V`,
      of: (row) => tries(row, operation),
    }),
  );
};
const coils = {
  closing: { least: ownCoil("closing", "least"), most: ownCoil("closing", "most") },
  opening: { least: ownCoil("opening", "least"), most: ownCoil("opening", "most") },
};

const waveOf = (cell: CellValue | undefined): "AC" | "DC" =>
  String(cell).toUpperCase() === "AC" ? "AC" : "DC";

/** Rated voltage and supply of a coil's circuit. */
const ratedOf = (row: Row, operation: Operation) =>
  operation === "closing"
    ? { volts: Number(row.ratedV), wave: waveOf(row.supply) }
    : {
        volts: Number(isBlank(row.openingRatedV) ? row.ratedV : row.openingRatedV),
        wave: waveOf(isBlank(row.openingRatedV) ? row.supply : row.openingSupply),
      };

const standard = (row: Row, operation: Operation, { basis }: Lineup) => {
  const { volts, wave } = ratedOf(row, operation);
  return coilRange(volts, { operation, wave, basis });
};

const COILS = [
  ["closing", "Closing coil"],
  ["opening", "Opening release"],
] as const;

const accepted: readonly Comparison[] = [
  ...COILS.map(
    ([coil]): Comparison => ({
      value: `${coil}Low`,
      limit: `${coil}Least`,
      unit: "V",
      sense: "most",
      excusable: true,
      lenient: `${coil}Doubt`,
      outright: true,
    }),
  ),
  ...(
    [
      { value: "charged", limit: "chargedMost", unit: "s", sense: "most", when: "chargedMost" },
      { value: "counted", limit: "made", sense: "equal", when: "counted" },
    ] as const
  ).map((one): Comparison => ({ ...one, outright: true })),
];
/** A voltage up to which a coil was not tried is no failure of the coil, and proves nothing. */
const enough: readonly Comparison[] = COILS.map(
  ([coil]): Comparison => ({
    value: `${coil}High`,
    limit: `${coil}Most`,
    unit: "V",
    sense: "least",
    excusable: true,
  }),
);

const worked = (id: string, header: string, end: End, unless: string): Column => ({
  id,
  header,
  role: "entry",
  width: 10,
  unit: "V",
  wave: "any",
  accepts: { type: "number", least: 0, most: 500 },
  need: "reading",
  above: { value: 0 },
  unless,
  help: `At the coil's terminals while it draws its current: the ${end === "least" ? "lowest" : "highest"} at which it was seen to work each time. A voltage that was not tried is not written here.`,
});

const range = (id: string, header: string, operation: Operation, end: End): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  unit: "V",
  format: "0.0##",
  own: coils[operation][end],
  help:
    end === "least"
      ? "The lower one where published tables differ."
      : "n/a where the row does not try this coil.",
  formula: (ref, { basis }) => {
    const [volts, supply] = ratedBy(ref, operation);
    const found = gear(
      "COILLIMIT",
      volts,
      quoted(operation),
      quoted(end === "least" ? "lowest" : "most"),
      supply,
      quoted(basis),
    );
    const given = `IFERROR(${found},"")`;
    return operation === "opening"
      ? given
      : `IF(${ref("coil")}=${quoted(SECOND)},${quoted(NOT_APPLICABLE)},${given})`;
  },
  value: (row, lineup) => {
    if (!tries(row, operation)) return NOT_APPLICABLE;
    const found = standard(row, operation, lineup);
    if (!found.ok) return null;
    const { least, most, lowest = least } = found.value.value;
    return end === "least" ? lowest : most;
  },
});

const ratedBy = (ref: Reference, operation: Operation): [volts: string, supply: string] =>
  operation === "closing"
    ? [ref("ratedV"), ref("supply")]
    : [
        `IF(${blank(ref("openingRatedV"))},${ref("ratedV")},${ref("openingRatedV")})`,
        `IF(${blank(ref("openingRatedV"))},${ref("supply")},${ref("openingSupply")})`,
      ];

/** The higher of two published least voltages: a coil that works from below it only may still be in order. */
const doubt = (operation: Operation, header: string): Column => ({
  id: `${operation}Doubt`,
  header,
  role: "limit",
  width: 9,
  unit: "V",
  format: "0.0##",
  help: "Above this it fails; between the two least voltages that published tables print the maker's plate decides.",
  value: (row, lineup) => {
    if (!tries(row, operation) || coils[operation].least(row, lineup)) return null;
    const found = standard(row, operation, lineup);
    return found.ok && found.value.value.lowest !== undefined ? found.value.value.least : null;
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
  { id: "coil", header: "Coils tried", role: "given", width: 16 },
  { id: "ratedV", header: "Rated control V", role: "given", width: 9, unit: "V" },
  { id: "supply", header: "Supply", role: "given", width: 7 },
  { id: "openingRatedV", header: "Opening: rated V", role: "given", width: 9, unit: "V" },
  { id: "openingSupply", header: "Opening: supply", role: "given", width: 8 },
  ...COILS.flatMap(([coil, name]): Column[] => [
    worked(`${coil}Low`, `${name} worked at V, low`, "least", `${coil}Least`),
    range(`${coil}Least`, `${name}: must work from V`, coil, "least"),
    doubt(coil, `${name}: fails above V`),
    worked(`${coil}High`, `${name} worked at V, high`, "most", `${coil}Most`),
    range(`${coil}Most`, `${name}: must work up to V`, coil, "most"),
  ]),
  {
    id: "charged",
    header: "Spring charged in s",
    role: "entry",
    width: 9,
    unit: "s",
    accepts: { type: "number", least: 0, most: 600 },
    need: "condition",
    above: { value: 0 },
    needed: (row, lineup) => !isBlank(row.chargedMost) || charging(row, lineup) !== undefined,
    help: "By the motor at rated voltage, from discharged to the end of its run.",
  },
  {
    id: "chargedMost",
    header: "Maximum s",
    role: "limit",
    width: 8,
    unit: "s",
    own: charging,
    help: "The maker's; where neither lineup nor sheet gives it, the time is only recorded.",
    value: (row) => row.chargedMost ?? null,
  },
  sources((row, lineup) => [
    ...COILS.flatMap(([coil, name]) =>
      tries(row, coil) ? [[name, rangeSource(row, coil, lineup)] as const] : [],
    ),
    ...(isOf(row, BOTH) ? [["spring", sourceOf(charging(row, lineup)) || TO_TYPE] as const] : []),
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
  const own = sourceOf(coils[operation].least(row, lineup) ?? coils[operation].most(row, lineup));
  if (own !== "") return own;
  const found = standard(row, operation, lineup);
  return found.ok
    ? sourceOf({ value: found.value.value.least, source: found.value.source })
    : found.say(storedWords());
}

/** The rows of a breaker: both coils, and a second trip coil. */
function rowsFor(object: string, breaker: Breaker, lineup: Lineup): Row[] {
  const device = deviceName(breaker);
  const [closes, opens] = [closingSupplyOf(breaker, lineup), openingSupplyOf(breaker, lineup)];
  const row = (part: string, coil: string): Row => ({
    object,
    part,
    coil,
    ratedV: closes.volts ?? null,
    supply: closes.kind ?? null,
    openingRatedV: opens.volts ?? null,
    openingSupply: opens.kind ?? null,
  });
  return [
    row(device, BOTH),
    ...(breaker.secondTripCoil ? [row(`${device} ${SECOND}`, SECOND)] : []),
  ];
}

/** Coils at the ends of their range, charging of the spring, and what the operation counter counted. */
export const mechanism: RecordKind<"mechanism"> = {
  id: "mechanism",
  step: "devices",
  sheet: "Mechanism",
  table: "GearMechanism",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }): Row[] =>
      // Coils of contactors follow a standard of their own, and a contactor has no spring to charge.
      breaker && !breaker.device ? rowsFor(designation, breaker, lineup) : [],
    ),
  voidBy: voidBy(["Breaker mechanism"]),
  accepted,
  enough,
  stress: COILS.map(([coil]) => ({ value: `${coil}High`, limit: `${coil}Most`, share: 0.2 })),
};
