import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { itemLimit } from "../../lineup/plate";
import { answered, closing, trail } from "../columns/common";
import { givenLimit, measured, named } from "../columns/measuredColumns";
import type { Column, Comparison, RecordKind, Row } from "../kind";
import { mostOf, sourceOf, sources, stricterOf, TO_TYPE } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Sensor = Panel["arcSensors"][number];

const sensorOf = (row: Row, lineup: Lineup): Sensor | undefined =>
  panelOf(lineup, String(row.object))?.arcSensors.find(
    ({ designation }) => designation === row.part,
  );
const most = stricterOf(
  "most",
  (row, lineup) => {
    const sensor = sensorOf(row, lineup);
    return itemLimit(sensor, sensor?.mostMs);
  },
  mostOf("arc protection ms"),
);

const accepted: readonly Comparison[] = [
  { value: "reading", limit: "most", unit: "ms", sense: "most" },
];

const columns: readonly Column[] = [
  ...named("Sensor", 14),
  { id: "unit", header: "Unit", role: "given", width: 12 },
  { id: "trips", header: "Trips", role: "given", width: 26 },
  answered("lit", "Lit", ["Seen by the unit", "Not seen"], {
    width: 15,
    help: "Each sensor by itself, with the flash that the maker names.",
  }),
  answered("tripped", "Breakers", ["As drawn", "Not as drawn"], {
    width: 12,
    help: "Those that stand under Trips, and no others; with the current criterion fulfilled, and none without it.",
  }),
  answered("supervised", "Sensor taken off", ["Fault shown", "Not shown"], {
    width: 13,
    help: "Fibre or lead taken off: the unit says so.",
  }),
  measured("reading", "Light to trip ms", "ms", { most: 10_000, above: { value: 0 } }),
  givenLimit("most", "Maximum ms", "ms", most),
  sources((row, lineup) => [["time", sourceOf(most(row, lineup)) || TO_TYPE]]),
  ...trail(),
];

/** Arc protection, sensor by sensor. */
export const arcProtection: RecordKind<"arcProtection"> = {
  id: "arcProtection",
  alsoCalled: ["arc flash protection", "arc protection"],
  step: "functions",
  sheet: "Arc protection",
  table: "GearArcProtection",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation: object, arcSensors }) =>
      arcSensors.map(
        ({ designation, unit, trips }): Row => ({ object, part: designation, unit, trips }),
      ),
    ),
  voidBy: voidBy([], ["Wiring"]),
  accepted,
  enough: [],
  plot: { value: "reading", limit: "most", unit: "ms", log: false },
};
