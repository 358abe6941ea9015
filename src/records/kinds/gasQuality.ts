import { deviceName } from "../../lineup/plate";
import { closing, quoted, trail } from "../columns/common";
import { givenLimit, measured, named } from "../columns/measuredColumns";
import { type Column, type Comparison, NOT_APPLICABLE, type RecordKind, type Row } from "../kind";
import { leastOf, mostOf, sourceOf, sources, TO_TYPE } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const ownMoisture = mostOf("SF6 moisture ppmv");
const ownPurity = leastOf("SF6 purity %");

const ownProducts = mostOf("SF6 decomposition products ppmv");

const accepted: readonly Comparison[] = [
  { value: "moisture", limit: "moistureMost", sense: "most", measured: true },
  { value: "purity", limit: "purityLeast", unit: "%", sense: "least" },
  {
    value: "products",
    limit: "productsMost",
    sense: "most",
    measured: true,
    when: "products",
    excusable: true,
  },
];

const columns: readonly Column[] = [
  ...named("Gas compartment", 16),
  {
    id: "moisture",
    header: "Moisture ppmv",
    role: "entry",
    width: 10,
    accepts: { type: "number", least: 0, most: 100_000 },
    need: "reading",
    help: "Parts of water vapour in a million parts of the gas by volume, once the reading is still; the meter's own conversion of a dew point says at what pressure.",
  },
  givenLimit("moistureMost", "Maximum ppmv", undefined, ownMoisture),
  measured("purity", "SF6 %", "%", {
    most: 100,
    help: "By volume; of a mixture the part that its plate names.",
  }),
  givenLimit("purityLeast", "Minimum %", "%", ownPurity),
  {
    id: "products",
    header: "Decomposition products ppmv",
    role: "entry",
    width: 13,
    accepts: { type: "number", least: 0, most: 100_000 },
    help: "SO2 and the like; of new gas none. What is found is judged by the maker's or project's limit.",
  },
  {
    id: "productsMost",
    header: "Maximum products ppmv",
    role: "limit",
    width: 11,
    own: ownProducts,
    help: "n/a where none were found. Where some were and the lineup gives no limit, type the maker's value here.",
    formula: (ref) => `IF(N(${ref("products")})>0,"",${quoted(NOT_APPLICABLE)})`,
    value: ({ products }) => (typeof products === "number" && products > 0 ? null : NOT_APPLICABLE),
  },
  sources((row, lineup) => [
    ["moisture", sourceOf(ownMoisture(row, lineup)) || TO_TYPE],
    ["products", sourceOf(ownProducts(row, lineup)) || TO_TYPE],
    ["purity", sourceOf(ownPurity(row, lineup)) || TO_TYPE],
  ]),
  ...trail(),
];

/** Quality of the SF6 in each breaker that is filled on site. */
export const gasQuality: RecordKind<"gasQuality"> = {
  id: "gasQuality",
  alsoCalled: ["sf6 quality", "gas quality", "sf6 moisture"],
  step: "devices",
  onRequest: true,
  sheet: "Gas quality",
  table: "GearGasQuality",
  columns: [...columns, verdictBy(columns, accepted, []), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker }): Row[] =>
      breaker?.gas && !breaker.gas.sealed
        ? [{ object: designation, part: deviceName(breaker) }]
        : [],
    ),
  after: [{ kind: "gas" }],
  voidBy: voidBy(["Gas compartment"]),
  accepted,
  enough: [],
};
