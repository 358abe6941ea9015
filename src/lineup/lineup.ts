import * as z from "zod/mini";
import { hasUnseen } from "../quantities/shown";
import { BASES } from "../standards/criterion";
import { type Document, EDITIONS, PURPOSES } from "../standards/editions";
import {
  arcSensor,
  arrester,
  battery,
  breaker,
  cable,
  circuit,
  currentCore,
  day,
  earthingSwitch,
  heater,
  instrument,
  jointGroup,
  knownAs,
  meter,
  motion,
  name,
  PANEL_TYPES,
  positive,
  protectionElement,
  relaySetting,
  scheme,
  voltageWinding,
} from "./equipment";
import { must } from "./must";
import {
  checkItem,
  furtherRecord,
  inspectionPoint,
  leftOut,
  RULE_WEIGHTS,
  USUAL_POINTS,
} from "./settings";

const panel = z.strictObject({
  knownAs,
  designation: name,
  name: z.optional(name),
  type: z.enum(PANEL_TYPES),
  /** The bus section that the panel stands on. */
  section: name,
  breaker: z.optional(breaker),
  /** Mass as on the packing list, kg. */
  massKg: z.optional(positive),
  circuit: z.optional(circuit),
  earthingSwitch: z.optional(earthingSwitch),
  currentTransformers: z._default(z.array(currentCore), []),
  voltageTransformers: z._default(z.array(voltageWinding), []),
  meters: z._default(z.array(meter), []),
  protection: z._default(z.array(protectionElement), []),
  cables: z._default(z.array(cable), []),
  joints: z._default(z.array(jointGroup), []),
  motion: z._default(z.array(motion), []),
  arresters: z._default(z.array(arrester), []),
  schemes: z._default(z.array(scheme), []),
  relaySettings: z._default(z.array(relaySetting), []),
  arcSensors: z._default(z.array(arcSensor), []),
  batteries: z._default(z.array(battery), []),
  heaters: z._default(z.array(heater), []),
});

/** One line of text that may be longer than a name. */
const longName = z.string().check(
  z.trim(),
  z.minLength(1, must("notBlank")),
  z.maxLength(240),
  z.regex(/^[^\r\n\t]*$/),
  z.refine((text) => !hasUnseen(text), must("seen")),
);

/**
 * A criterion of the project's or the maker's own, which comes before the standard's.
 * `applies` names the panels or sections it is for; without it, it is for all.
 */
const ownCriterion = z.strictObject({
  from: z.enum(["maker", "project"]),
  /** Its name with its unit, as the record kinds declare it: `joint resistance µΩ`. */
  quantity: name,
  value: positive,
  document: name,
  applies: z.optional(z.array(name).check(z.minLength(1))),
});

const editionOf = <D extends Document>(document: D) => z.optional(z.enum(EDITIONS[document]));

/** A choice of editions for every document that there are several of. */
const editionChoices = Object.fromEntries(
  (Object.keys(EDITIONS) as Document[]).map((document) => [document, editionOf(document)]),
) as unknown as { readonly [D in Document]: ReturnType<typeof editionOf<D>> };

/** A lineup as it is described in a `*.lineup.json` file. */
export const lineupSchema = z.strictObject({
  note: z.optional(z.string()),
  project: z.strictObject({
    name,
    site: name,
    number: z.optional(name),
    /** Who the tests are made for, and who makes them, with their addresses as a report has them. */
    client: z.optional(longName),
    contractor: z.optional(longName),
    specification: z.optional(name),
    specificationRevision: z.optional(name),
    drawings: z._default(
      z.array(z.strictObject({ number: name, revision: name, title: z.optional(name) })),
      [],
    ),
    /** Issues of the report so far, the present one last: what it is called, its day, and what it changes. */
    revisions: z.optional(
      z.array(z.strictObject({ revision: name, date: z.optional(day), change: longName })),
    ),
  }),
  basis: z.enum(BASES),
  /** What the tests are for: acceptance of new gear, or maintenance; acceptance where nothing is said. */
  purpose: z.optional(z.enum(PURPOSES)),
  /** Editions that the project asks for; of any other document the current one applies. */
  editions: z.optional(z.strictObject(editionChoices)),
  /** Criteria that are set down here from memory and that somebody has confirmed against the standard, each by the name that its source has. */
  confirmed: z._default(z.array(z.strictObject({ criterion: longName, by: name })), []),
  ratings: z.strictObject({
    /** Rated voltage U_r (IEC) or rated maximum voltage (IEEE), kV. */
    voltagekV: positive.check(z.maximum(72.5, must("mediumVoltage"))),
    operatingkV: z.optional(positive),
    frequencyHz: z.union([z.literal(50), z.literal(60)], must("frequency")),
    busbarA: positive,
    shortTimekA: z.optional(positive),
    shortTimeS: z.optional(positive),
    controlV: z.optional(positive),
    /** Whether the control supply is AC or DC. */
    controlKind: z.optional(z.enum(["AC", "DC"])),
    /** What the control wiring is rated, V: 300 or 600; it sets its test voltage under NETA. */
    controlWireV: z.optional(positive),
    /** Rated insulation level on the plate, kV: power frequency, one minute, and lightning impulse. */
    powerFrequencykV: z.optional(positive),
    impulsekV: z.optional(positive),
    /** Degree of protection of the enclosure, as on the plate: IP3X. */
    degreeOfProtection: z.optional(
      z.string().check(z.trim(), z.regex(/^IP[0-6X][0-9X][A-Z]{0,3}$/, must("degree"))),
    ),
    altitudeM: z._default(z.number().check(z.minimum(-400), z.maximum(6000)), 0),
  }),
  insulation: z._default(
    z.strictObject({
      /** How a reading is brought to the base temperature: by table for solid or oil insulation, by halving, or not at all. */
      correction: z._default(z.enum(["solid", "oil", "halving", "none"]), "solid"),
      baseC: z._default(z.number().check(z.minimum(-10), z.maximum(105)), 20),
    }),
    { correction: "solid", baseC: 20 },
  ),
  withstand: z._default(
    z.strictObject({
      wave: z._default(z.enum(["AC", "DC"]), "AC"),
      seconds: z._default(positive, 60),
      /** Shortest path in air between live parts or to earth, m. Given: the test voltage is corrected to the air of the day (IEC 60060-1). */
      gapM: z.optional(positive.check(z.maximum(2))),
      /** Whether solid, vacuum or gas insulation lies in parallel with the air; it does in metal-clad gear where nothing is said. */
      parallelInternal: z.optional(z.boolean()),
    }),
    { wave: "AC", seconds: 60 },
  ),
  criteria: z._default(z.array(ownCriterion), []),
  leaveOut: z._default(z.array(leftOut), []),
  furtherRecords: z._default(z.array(furtherRecord), []),
  inspectionPoints: z._default(z.array(inspectionPoint), [...USUAL_POINTS]),
  checkItems: z._default(z.array(checkItem), []),
  /** What the phases are called, in their order. */
  phases: z._default(z.tuple([name, name, name]), ["L1", "L2", "L3"]),
  /** Whether a reading is accepted as it stands, or only where its uncertainty leaves no doubt. */
  decisionRule: z._default(z.enum(["simple", "guarded"]), "simple"),
  /** Weights that the project gives to rules of the check, by the rule's name. */
  ruleWeights: z.optional(z.record(name, z.enum(RULE_WEIGHTS))),
  panels: z.array(panel).check(z.minLength(1, must("panels"))),
  instruments: z._default(z.array(instrument), []),
});

export type Lineup = z.output<typeof lineupSchema>;
export type Panel = Lineup["panels"][number];
export type Instrument = Lineup["instruments"][number];
export type OwnCriterion = Lineup["criteria"][number];

/** Names are the same when only case, spaces and punctuation differ. */
export const sameName = (one: string, other: string): boolean => bare(one) === bare(other);

/** What is left of a name when case, spaces and punctuation are taken off. */
export const bare = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}+]/gu, "");
