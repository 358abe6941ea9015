import { closing, trail } from "../columns/common";
import { givenLimit, named } from "../columns/measuredColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { mostOf, sourceOf, sources } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

/** Methods, the unit of each, and the project's own limit by name. */
const METHODS = [
  { method: "Transient earth voltage", unit: "dBmV", own: "transient earth voltage dB" },
  { method: "Ultrasound", unit: "dBµV", own: "ultrasound dBµV" },
] as const;

const own = mostOf(
  ...METHODS.map((one) => ({ name: one.own, of: ({ method }: Row) => method === one.method })),
);

const accepted: readonly Comparison[] = [{ value: "reading", limit: "most", sense: "most" }];
/** Where the background alone lies above what is allowed, nothing is told of the panel. */
const enough: readonly Comparison[] = [{ value: "background", limit: "most", sense: "most" }];

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
  accepts: { type: "number", least: -40, most: 120 },
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
    "On metal that is no part of the gear: a door, a ladder; with the same instrument.",
  ),
  level(
    "reading",
    "Level",
    "reading",
    "The highest at the panel; where it was found stands in the remarks.",
  ),
  givenLimit("most", "Project's maximum", undefined, own, {
    help: "Only where the project accepts by it: without it the survey informs.",
  }),
  sources((row, lineup) => [
    ["level", sourceOf(own(row, lineup)) || "a survey informs: the project names no value"],
  ]),
  ...trail(),
];

/** Survey of partial discharge of switchgear under voltage. */
export const partialDischarge: RecordKind<"partialDischarge"> = {
  id: "partialDischarge",
  title: "Partial discharge survey",
  alsoCalled: ["partial discharges?", "pd survey", "tev"],
  step: "energization",
  onRequest: true,
  sheet: "Partial discharge",
  table: "GearPartialDischarge",
  purpose:
    "Transient earth voltage and ultrasound at each panel under voltage, over the background. A survey informs and is compared with the next one; it accepts only where the project says by what. It is no measurement of charge as a test laboratory makes it (IEC 60270).",
  cautions: [
    "The gear is alive: from outside closed and earthed enclosures only, under the site's permit system, by people licensed to be there.",
    "A high level may be a fault about to happen: go back, warn, and ask the one who is responsible before anybody goes near again.",
    "Do not open a cover to hear better. The maker's instruction, the local code and licensed practice come first.",
  ],
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation }) =>
      METHODS.map(
        ({ method, unit }): Row => ({
          object: designation,
          part: "Switchgear",
          method,
          inUnit: unit,
        }),
      ),
    ),
  voidBy: voidBy(["Main insulation", "Cable"]),
  accepted,
  enough,
};
