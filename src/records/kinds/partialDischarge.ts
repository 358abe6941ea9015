import { backgroundShare } from "../../standards/iec60270.2000";
import { answered, blank, closing, trail } from "../columns/common";
import { givenLimit, measured, named } from "../columns/measuredColumns";
import { type Column, type Comparison, NOT_APPLICABLE, type RecordKind, type Row } from "../kind";
import { leastOf, mostOf, sourceOf, sources } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

/** Methods of a survey, the unit of each, and the project's own limit by name. */
const METHODS = [
  { method: "Transient earth voltage", unit: "dBmV", own: "transient earth voltage dB" },
  { method: "Ultrasound", unit: "dBµV", own: "ultrasound dBµV" },
] as const;

/** A measurement of charge, made only where maker or project says what charge is allowed. */
const CHARGE = "Charge (IEC 60270)";
const SWITCHGEAR = "Switchgear";
const isCharge = ({ method }: Row) => method === CHARGE;
const isOfCable = (row: Row) => isCharge(row) && row.part !== SWITCHGEAR;
const isOfGear = (row: Row) => isCharge(row) && row.part === SWITCHGEAR;

const own = mostOf(
  ...METHODS.map((one) => ({ name: one.own, of: ({ method }: Row) => method === one.method })),
  { name: "partial discharge pC", of: isOfGear },
  { name: "cable partial discharge pC", of: isOfCable },
);
/** The voltage that a charge is allowed at: below it nothing is told. */
const ownVoltage = leastOf(
  { name: "partial discharge test kV", of: isOfGear },
  { name: "cable partial discharge test kV", of: isOfCable },
);

const accepted: readonly Comparison[] = [{ value: "reading", limit: "most", sense: "most" }];
/** Where the background alone lies above what is allowed, nothing is told of the panel. */
const enough: readonly Comparison[] = [
  { value: "background", limit: "backgroundMost", sense: "most" },
  { value: "applied", limit: "appliedLeast", unit: "kV", sense: "least", excusable: true },
];

const level = (
  id: string,
  header: string,
  need: "reading" | "condition",
  help: string,
): Column => ({
  id,
  header,
  role: "entry",
  width: 10,
  unitIn: "inUnit",
  accepts: { type: "number", least: -40, most: 1_000_000 },
  need,
  help,
});

const columns: readonly Column[] = [
  ...named("Of", 12),
  { id: "method", header: "Method", role: "key", width: 22 },
  { id: "inUnit", header: "Unit", role: "given", width: 7 },
  level(
    "background",
    "Background",
    "condition",
    "Of a survey: on metal that is no part of the gear, a door, a ladder; of a charge: with the circuit calibrated and no voltage. With the same instrument.",
  ),
  level(
    "reading",
    "Level",
    "reading",
    "The highest at the panel; where it was found stands in the remarks.",
  ),
  measured("applied", "Test kV", "kV", {
    most: 200,
    wave: "any",
    need: "condition",
    needed: isCharge,
    unless: "appliedLeast",
    help: "Of a measurement of charge: the voltage to earth at which this level was read.",
  }),
  givenLimit("appliedLeast", "Minimum test kV", "kV", ownVoltage, {
    help: "The voltage to earth that the charge is allowed at: type the maker's. n/a of a survey.",
    value: (row) => row.appliedLeast ?? (isCharge(row) ? null : NOT_APPLICABLE),
  }),
  { id: "asksPulse", header: "Calibration", role: "given", width: 9 },
  answered("pulse", "Calibrated", ["Calibrated", "Not calibrated"], {
    width: 13,
    asked: "asksPulse",
    needed: isCharge,
    help: "A known charge put in at the object, with the circuit as it was used.",
  }),
  givenLimit("most", "Project's maximum", undefined, own, {
    help: "Only where the project accepts by it: without it the survey informs.",
  }),
  {
    id: "backgroundMost",
    header: "Maximum background",
    role: "limit",
    width: 10,
    help: "Of a survey what the level may be; of a charge half of it.",
    formula: (ref) =>
      `IF(ISNUMBER(${ref("most")}),IF(${blank(ref("asksPulse"))},${ref("most")},${ref("most")}*${backgroundShare.value}),"")`,
    value: (row) =>
      typeof row.most === "number"
        ? isCharge(row)
          ? row.most * backgroundShare.value
          : row.most
        : null,
  },
  sources((row, lineup) => [
    ["level", sourceOf(own(row, lineup)) || "a survey informs: the project names no value"],
    ...(isCharge(row)
      ? ([
          ["test kV", sourceOf(ownVoltage(row, lineup)) || "none given"],
          ["background", sourceOf(backgroundShare)],
        ] as const)
      : []),
  ]),
  ...trail(),
];

/** Partial discharge: of switchgear under voltage by survey, of gear and cables by charge where a limit of it is given. */
export const partialDischarge: RecordKind<"partialDischarge"> = {
  id: "partialDischarge",
  alsoCalled: ["partial discharges?", "pd survey", "tev"],
  step: "energization",
  onRequest: true,
  sheet: "Partial discharge",
  table: "GearPartialDischarge",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, cables }): Row[] => [
      ...METHODS.map(({ method, unit }) => ({ object, part: SWITCHGEAR, method, inUnit: unit })),
      ...[SWITCHGEAR, ...cables.map(({ designation }) => designation)]
        .map((part) => ({ object, part, method: CHARGE, inUnit: "pC", asksPulse: "asked" }))
        .filter((row) => own(row, lineup) !== undefined),
    ]),
  live: (row) => !isCharge(row),
  voidBy: voidBy(["Main insulation", "Cable"]),
  accepted,
  enough,
};
