import type { Lineup } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { answered, closing, trail } from "../columns/common";
import { measured } from "../columns/measuredColumns";
import { plateColumn, plateSource } from "../columns/transformerColumns";
import { figure } from "../figure";
import type { Column, Comparison, Contradiction, RecordKind, Row } from "../kind";
import { sources } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";
import { burdenOf, type Core, phasesOf } from "./currentTransformer";

const coreOf = (row: Row, lineup: Lineup): Core | undefined =>
  panelOf(lineup, String(row.object))?.currentTransformers.find(({ name }) => name === row.part);

const loopMost = plateColumn<Core>(
  { id: "loopMost", header: "Rated VA", width: 8, unit: "VA" },
  coreOf,
  burdenOf,
  ["most", "current transformer burden VA"],
);

/** A plate without a burden leaves the loop unjudged, and the row inconclusive. */
const accepted: readonly Comparison[] = [
  { value: "loopVA", limit: "loopMost", unit: "VA", sense: "most", excusable: true },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Core", role: "key", width: 12 },
  { id: "phase", header: "Phase", role: "key", width: 7 },
  { id: "ratedSecondary", header: "Rated secondary A", role: "given", width: 9, unit: "A" },
  measured("loop", "Loop Ω", "Ω", {
    most: 10_000,
    above: { value: 0 },
    help: "Leads, links and relays as the transformer sees them from its terminals, without its own winding.",
  }),
  {
    id: "loopVA",
    header: "Loop VA",
    role: "computed",
    width: 9,
    unit: "VA",
    format: "0.00",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("loop")}),ISNUMBER(${ref("ratedSecondary")})),${ref("loop")}*${ref("ratedSecondary")}*${ref("ratedSecondary")},"")`,
    value: ({ loop, ratedSecondary }) =>
      typeof loop === "number" && typeof ratedSecondary === "number"
        ? loop * ratedSecondary * ratedSecondary
        : null,
    working: ({ loop, ratedSecondary, loopVA }) =>
      workedOut(loopVA, `${onPaper(loop)} Ω × (${onPaper(ratedSecondary)} A)²`, "VA"),
  },
  loopMost,
  answered("earth", "Earthed at", ["One point", "None", "Several"], {
    help: "Of the whole circuit with all that is connected to it: lifted once, it must be off earth.",
  }),
  answered("demagnetized", "As left", ["Demagnetized", "Not demagnetized"], {
    width: 14,
    help: "After every direct current: winding resistance, and injection that was broken off.",
  }),
  answered("links", "Links and shorting", ["As drawn", "Not as drawn"], {
    width: 13,
    help: "As left for service: links closed, shorting taken off where the core is in use, spare cores shorted and earthed.",
  }),
  sources((row, lineup) => [["loop", plateSource(loopMost, row, lineup)]]),
  ...trail(),
];

const circuitOf = ({ object, part, phase }: Row): string => `${object}\u0000${part}\u0000${phase}`;

/** A burden is no less than what its loop's resistance takes, two instruments' errors aside; with coils of old relays it is a few times as much. Common practice, no source. */
const [BURDEN_LEAST, BURDEN_MOST] = [0.8, 5];

/** The burden that was measured at the transformer, against the resistance of the loop that makes it. */
function burdenOffLoop({ loopVA }: Row, { burden }: Row): Contradiction | undefined {
  const measuredVA = exactly(burden, "VA");
  if (typeof loopVA !== "number" || measuredVA === undefined || measuredVA === 0) return undefined;
  return measuredVA < BURDEN_LEAST * loopVA || measuredVA > BURDEN_MOST * loopVA
    ? {
        column: "loopVA",
        why: "burden",
        found: `${figure(loopVA)} VA`,
        other: `${figure(measuredVA)} VA`,
      }
    : undefined;
}

/** Secondary circuits of current transformers as they are left. */
export const currentLoop: RecordKind<"currentLoop"> = {
  id: "currentLoop",
  alsoCalled: ["ct loops?", "loop resistance", "ct circuits?"],
  step: "devices",
  onRequest: true,
  sheet: "CT circuits",
  table: "GearCurrentLoop",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, currentTransformers }) =>
      currentTransformers.flatMap((core) =>
        phasesOf(core).map(
          (phase): Row => ({
            object: designation,
            part: core.name,
            phase,
            ratedSecondary: core.secondaryA,
          }),
        ),
      ),
    ),
  after: [{ kind: "currentTransformer" }],
  against: [
    {
      kind: "currentTransformer",
      own: circuitOf,
      other: circuitOf,
      contradiction: burdenOffLoop,
    },
  ],
  voidBy: voidBy(["Current transformer"], ["Wiring"]),
  accepted,
  enough: [],
  plot: { value: "loopVA", limit: "loopMost", unit: "VA", log: false },
};
