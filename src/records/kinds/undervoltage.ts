import type { Lineup } from "../../lineup/lineup";
import { type Breaker, deviceName, plateLimit } from "../../lineup/plate";
import { storedWords } from "../../messages/told";
import { undervoltageRange } from "../../standards/coilRange";
import { closing, trail } from "../columns/common";
import { openingSupplyOf, type Supply } from "../columns/controlSupply";
import type { Column, Comparison, Own, RecordKind, Row } from "../kind";
import { sourceOf, sources, stricterOf, strictestOf } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type End = "pickupMost" | "dropoutLeast" | "dropoutMost";
const NAMES: Readonly<Record<End, string>> = {
  pickupMost: "undervoltage release pick-up most V",
  dropoutLeast: "undervoltage release drop-out least V",
  dropoutMost: "undervoltage release drop-out most V",
};

const ownLimit = (end: End, sense: "least" | "most"): Own =>
  stricterOf(
    sense,
    (row, lineup) =>
      plateLimit(lineup, String(row.object), ({ undervoltageV }) => undervoltageV?.[end]),
    strictestOf(sense, NAMES[end]),
  );
const own = {
  pickupMost: ownLimit("pickupMost", "most"),
  dropoutLeast: ownLimit("dropoutLeast", "least"),
  dropoutMost: ownLimit("dropoutMost", "most"),
};

const standard = ({ ratedV, supply }: Row, { basis }: Lineup) =>
  undervoltageRange(Number(ratedV), supply === "AC" ? "AC" : "DC", basis);

const limit = (id: End, header: string): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  unit: "V",
  format: "0.0##",
  own: own[id],
  value: (row, lineup) => {
    const found = standard(row, lineup);
    return found.ok ? found.value.value[id] : null;
  },
});

const seen = (id: string, header: string, help: string): Column => ({
  id,
  header,
  role: "entry",
  width: 10,
  unit: "V",
  wave: "any",
  accepts: { type: "number", least: 0, most: 500 },
  need: "reading",
  above: { value: 0 },
  help,
});

const accepted: readonly Comparison[] = (
  [
    { value: "pickup", limit: "pickupMost", sense: "most" },
    { value: "dropout", limit: "dropoutLeast", sense: "least" },
    { value: "dropout", limit: "dropoutMost", sense: "most" },
  ] as const
).map((one): Comparison => ({ ...one, unit: "V", outright: true }));

/** A release lets go below where it picks up: the other way round one of the two was misread. */
const enough: readonly Comparison[] = [
  { value: "pickup", limit: "dropout", unit: "V", sense: "least" },
];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Release", role: "key", width: 26 },
  { id: "ratedV", header: "Rated control V", role: "given", width: 9, unit: "V" },
  { id: "supply", header: "Supply", role: "given", width: 7 },
  seen("pickup", "Picked up V", "Raised slowly from nothing: the lowest voltage at which it held."),
  limit("pickupMost", "Pick-up most V"),
  seen(
    "dropout",
    "Dropped out V",
    "Lowered slowly from rated voltage: where it let go and tripped.",
  ),
  limit("dropoutLeast", "Drop-out least V"),
  limit("dropoutMost", "Drop-out most V"),
  sources((row, lineup) => [["release", releaseSource(row, lineup)]]),
  ...trail(),
];

function releaseSource(row: Row, lineup: Lineup): string {
  const given = sourceOf(own.pickupMost(row, lineup) ?? own.dropoutMost(row, lineup));
  if (given !== "") return given;
  const found = standard(row, lineup);
  return found.ok
    ? sourceOf({ value: found.value.value.pickupMost, source: found.value.source })
    : found.say(storedWords());
}

const rowFor = (object: string, breaker: Breaker, { volts, kind }: Supply): Row => ({
  object,
  part: `${deviceName(breaker)} undervoltage release`,
  ratedV: volts ?? null,
  supply: kind ?? null,
});

/** Undervoltage releases: where they hold and where they let go. */
export const undervoltage: RecordKind<"undervoltage"> = {
  id: "undervoltage",
  alsoCalled: ["undervoltage releases?", "uv releases?"],
  step: "devices",
  sheet: "Undervoltage",
  table: "GearUndervoltage",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }): Row[] =>
      breaker?.undervoltageV && !breaker.device
        ? [rowFor(designation, breaker, openingSupplyOf(breaker, lineup))]
        : [],
    ),
  voidBy: voidBy(["Breaker mechanism"]),
  accepted,
  enough,
};
