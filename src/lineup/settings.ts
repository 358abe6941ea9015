import * as z from "zod/mini";
import { name, PANEL_TYPES, positive } from "./equipment";
import { must } from "./must";

/** Id of a record kind; records/ knows which there are. */
const recordKind = name;

/** A record kind that the project does without: no sheet, and the cover says why. */
export const leftOut = z.strictObject({
  kind: recordKind,
  reason: name,
  document: z.optional(name),
});

/** A record kind that is kept only where the project asks for it. */
export const furtherRecord = z.strictObject({
  kind: recordKind,
  document: z.optional(name),
});

/** Review (R), witness (W) or hold (H) point of an inspection and test plan. */
export const POINT_TYPES = ["review", "witness", "hold"] as const;

/** An activity that the client or his engineer inspects, once for the lineup or panel by panel. */
export const inspectionPoint = z
  .strictObject({
    activity: name,
    type: z.enum(POINT_TYPES),
    /** The record kinds that may not go ahead until a hold point is released. */
    guards: z.optional(z.array(recordKind).check(z.minLength(1))),
    each: z._default(z.enum(["lineup", "panel"]), "lineup"),
    document: z.optional(name),
  })
  .check(z.refine(({ type, guards }) => !guards || type === "hold", must("holdPoint")));

export type InspectionPoint = z.output<typeof inspectionPoint>;

/**
 * Points that stand where a project names none: common practice, no source. Its inspection and test
 * plan comes first.
 */
export const USUAL_POINTS: readonly InspectionPoint[] = [
  { activity: "Drawings, procedures and calibration", type: "review", each: "lineup" },
  { activity: "Busbar joints before they are covered", type: "witness", each: "lineup" },
  {
    activity: "Release for the withstand test",
    type: "hold",
    guards: ["withstand"],
    each: "lineup",
  },
  { activity: "Withstand test", type: "witness", each: "lineup" },
  { activity: "Function tests", type: "witness", each: "lineup" },
];

/** A check of the project's own: seen to, measured in mm, or tried. */
export const checkItem = z
  .strictObject({
    /** A record kind that takes items of the project's own. */
    kind: recordKind,
    item: name,
    /** The panels it is for, by name or by type; without both, every panel. */
    applies: z.optional(z.array(name).check(z.minLength(1))),
    types: z.optional(z.array(z.enum(PANEL_TYPES)).check(z.minLength(1))),
    /** Of a dimension: the least and the most that the document allows, mm. */
    least: z.optional(positive),
    most: z.optional(positive),
    document: name,
  })
  .check(
    z.refine(
      ({ least, most }) => least === undefined || most === undefined || least < most,
      must("leastBelowMost"),
    ),
  );

export type CheckItem = z.output<typeof checkItem>;

/** How much a finding of the check may weigh. */
export const RULE_WEIGHTS = ["stop", "query", "note"] as const;
