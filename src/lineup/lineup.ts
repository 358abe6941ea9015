import * as z from "zod";
import { BASES } from "../criteria/criterion";
import {
  breaker,
  cable,
  currentCore,
  instrument,
  jointGroup,
  meter,
  name,
  PANEL_TYPES,
  positive,
  protectionElement,
  voltageWinding,
} from "./equipment";
import { checkItem, inspectionPoint, leftOut, RULE_WEIGHTS, USUAL_POINTS } from "./settings";

const panel = z.strictObject({
  designation: name,
  name: name.optional(),
  type: z.enum(PANEL_TYPES),
  /** The bus section that the panel stands on. */
  section: name,
  breaker: breaker.optional(),
  /** Mass as on the packing list, kg. */
  massKg: positive.optional(),
  currentTransformers: z.array(currentCore).default([]),
  voltageTransformers: z.array(voltageWinding).default([]),
  meters: z.array(meter).default([]),
  protection: z.array(protectionElement).default([]),
  cables: z.array(cable).default([]),
  joints: z.array(jointGroup).default([]),
});

/**
 * A criterion of the project's or the maker's own, which comes before the standard's.
 * `applies` names the panels or sections it is for; without it, it is for all.
 */
const ownCriterion = z.strictObject({
  from: z.enum(["maker", "project"]),
  quantity: z.enum([
    "insulation minimum MΩ",
    "insulation test voltage V",
    "withstand kV",
    "withstand duration s",
    "contact resistance µΩ",
    "contact test current A",
    "joint resistance µΩ",
    "earthing resistance mΩ",
    "torque tolerance %",
    "control wiring insulation MΩ",
    "control wiring test voltage V",
    "control wiring withstand kV",
    "control wiring withstand duration s",
    "polarization index",
    "absorption ratio",
    "current transformer ratio error %",
    "transformer insulation MΩ",
    "transformer test voltage V",
    "cable insulation MΩ",
    "cable test voltage V",
    "cable sheath MΩ",
    "cable withstand kV",
    "cable withstand min",
    "clearance in front mm",
    "clearance behind mm",
    "clearance at the sides mm",
    "clearance above mm",
    "level over 1 m mm",
    "alignment of fronts mm",
    "SF6 leak rate % a year",
  ]),
  value: positive,
  document: name,
  applies: z.array(name).min(1).optional(),
});

/** What a project or maker can set a criterion of its own for. */
export const OWN_QUANTITIES = ownCriterion.shape.quantity.options;

/** A lineup as it is described in a `*.lineup.json` file. */
export const lineupSchema = z.strictObject({
  note: z.string().optional(),
  project: z.strictObject({
    name,
    site: name,
    number: name.optional(),
    specification: name.optional(),
    specificationRevision: name.optional(),
    drawings: z
      .array(z.strictObject({ number: name, revision: name, title: name.optional() }))
      .default([]),
  }),
  basis: z.enum(BASES),
  ratings: z.strictObject({
    /** Rated voltage U_r (IEC) or rated maximum voltage (IEEE), kV. */
    voltagekV: positive.max(72.5, "must be at most 72.5 kV: beyond medium voltage"),
    operatingkV: positive.optional(),
    frequencyHz: z.union([z.literal(50), z.literal(60)], "must be 50 or 60"),
    busbarA: positive,
    shortTimekA: positive.optional(),
    shortTimeS: positive.optional(),
    controlV: positive.optional(),
    altitudeM: z.number().min(-400).max(6000).default(0),
  }),
  insulation: z
    .strictObject({
      /** How a reading is brought to the base temperature: by table for solid or oil insulation, by halving, or not at all. */
      correction: z.enum(["solid", "oil", "halving", "none"]).default("solid"),
      baseC: z.number().min(-10).max(105).default(20),
    })
    .default({ correction: "solid", baseC: 20 }),
  withstand: z
    .strictObject({
      wave: z.enum(["AC", "DC"]).default("AC"),
      seconds: positive.default(60),
      /** Shortest path in air between live parts or to earth, m. Given: the test voltage is corrected to the air of the day (IEC 60060-1). */
      gapM: positive.max(2).optional(),
    })
    .default({ wave: "AC", seconds: 60 }),
  criteria: z.array(ownCriterion).default([]),
  leaveOut: z.array(leftOut).default([]),
  inspectionPoints: z.array(inspectionPoint).default([...USUAL_POINTS]),
  checkItems: z.array(checkItem).default([]),
  /** Weights that the project gives to rules of the check, by the rule's name. */
  ruleWeights: z.record(name, z.enum(RULE_WEIGHTS)).optional(),
  panels: z.array(panel).min(1, "must have at least one panel"),
  instruments: z.array(instrument).default([]),
});

export type Lineup = z.output<typeof lineupSchema>;
export type Panel = Lineup["panels"][number];
export type Instrument = Lineup["instruments"][number];
export type OwnCriterion = Lineup["criteria"][number];
export type OwnQuantity = OwnCriterion["quantity"];

/** Names are the same when only case, spaces and punctuation differ. */
export const sameName = (one: string, other: string): boolean => bare(one) === bare(other);

/** What is left of a name when case, spaces and punctuation are taken off. */
export const bare = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}+]/gu, "");
