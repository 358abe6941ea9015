import type { MOTIONS } from "../../lineup/equipment";
import type { Lineup, Panel } from "../../lineup/lineup";
import { panelOf } from "../../lineup/panelOf";
import { deviceName, itemLimit } from "../../lineup/plate";
import { closing, PHASES, trail } from "../columns/common";
import {
  type Column,
  type Comparison,
  NOT_APPLICABLE,
  type Own,
  type RecordKind,
  type Row,
} from "../kind";
import { sourceOf, sources, TO_TYPE } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

type Quantity = (typeof MOTIONS)[number];

/** Measured at each pole; the rest once for the mechanism. */
const BY_POLE: readonly Quantity[] = ["contact wipe mm", "contact bounce ms"];
const ALL_POLES = "all";

/** A quantity without its unit, and the unit. */
const parted = (quantity: Quantity): [name: string, unit: string] => {
  const at = quantity.lastIndexOf(" ");
  return [quantity.slice(0, at), quantity.slice(at + 1)];
};

const motionOf = (row: Row, lineup: Lineup): Panel["motion"][number] | undefined =>
  panelOf(lineup, String(row.object))?.motion.find(
    ({ quantity }) => parted(quantity)[0] === row.quantity,
  );
const own =
  (end: "least" | "most"): Own =>
  (row, lineup) => {
    const found = motionOf(row, lineup);
    return itemLimit(found, found?.[end]);
  };
const least = own("least");
const most = own("most");

const accepted: readonly Comparison[] = [
  { value: "reading", limit: "most", sense: "most", excusable: true, measured: true },
  { value: "reading", limit: "least", sense: "least", excusable: true, measured: true },
];

/** One end of the maker's window; where he gives the other alone, the row does without this one. */
const end = (id: "least" | "most", header: string, limit: Own, other: Own): Column => ({
  id,
  header,
  role: "limit",
  width: 9,
  own: limit,
  help: "Where the lineup gives neither, type the maker's values here; n/a where he gives the other alone.",
  value: (row, lineup) => (other(row, lineup) ? NOT_APPLICABLE : (row[id] ?? null)),
});

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Breaker", role: "key", width: 14 },
  { id: "quantity", header: "Quantity", role: "key", width: 22 },
  { id: "pole", header: "Pole", role: "key", width: 7 },
  { id: "inUnit", header: "Unit", role: "given", width: 6 },
  {
    id: "reading",
    header: "Measured",
    role: "entry",
    width: 10,
    unitIn: "inUnit",
    accepts: { type: "number", least: 0, most: 10_000 },
    need: "reading",
    above: {
      value: 0,
      except: { column: "quantity", words: ["overtravel", "rebound", "contact bounce"] },
    },
    help: "At rated control voltage, in the unit that stands in its row; speeds over the stretch of travel that the maker names, currents at their greatest after the inrush where he says so.",
  },
  end("least", "Minimum", least, most),
  end("most", "Maximum", most, least),
  sources((row, lineup) => [
    ["window", sourceOf(most(row, lineup) ?? least(row, lineup)) || TO_TYPE],
  ]),
  ...trail(),
];

/** Travel, speed, bounce and wipe of breakers, and the currents of their coils and motor. */
export const motion: RecordKind<"motion"> = {
  id: "motion",
  alsoCalled: ["travel", "contact bounce", "coil currents?", "motor currents?"],
  step: "devices",
  sheet: "Motion",
  table: "GearMotion",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) => lineup.panels.flatMap(rowsFor),
  voidBy: voidBy(["Breaker mechanism", "Breaker pole"]),
  accepted,
  enough: [],
};

function rowsFor({ designation, breaker, motion: quantities }: Panel): Row[] {
  if (!breaker) return [];
  return quantities.flatMap(({ quantity }) => {
    const [name, unit] = parted(quantity);
    return (BY_POLE.includes(quantity) ? PHASES : [ALL_POLES]).map(
      (pole): Row => ({
        object: designation,
        part: deviceName(breaker),
        quantity: name,
        pole,
        inUnit: unit,
      }),
    );
  });
}
