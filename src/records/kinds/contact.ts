import { contactCorrect } from "../../engineering/contactCorrect";
import { zeroResistance } from "../../engineering/zeroResistance";
import { busJoints } from "../../lineup/busbar";
import type { Lineup } from "../../lineup/lineup";
import { type OwnLimit, ownCriterion } from "../../lineup/ownCriterion";
import { deviceName, plateLimit } from "../../lineup/plate";
import { bounded } from "../../quantities/bounded";
import { contactTestCurrent } from "../../standards/contactTestCurrent";
import { blank, closing, gear, PHASES, result, trail } from "../columns/common";
import { figure } from "../figure";
import { judged } from "../judged";
import { type CellValue, isBlank, type RecordKind, type Row } from "../kind";
import { sourceOf, sources, TO_TYPE } from "../limits";
import { exactly, quantity } from "../quantity";

const isJoint = (row: Row) => String(row.part).startsWith("Joint");
const NOT_CORRECTED = "not corrected";

/** The greatest resistance allowed: a breaker's by its plate, else a criterion of the maker or project. */
const ownLimit = (row: Row, lineup: Lineup): OwnLimit | undefined =>
  isJoint(row)
    ? ownCriterion(lineup, "joint resistance µΩ", String(row.object))
    : (plateLimit(lineup, String(row.object), ({ contactLimit }) => contactLimit) ??
      ownCriterion(lineup, "contact resistance µΩ", String(row.object)));

const ownCurrent = (row: Row, lineup: Lineup) =>
  ownCriterion(lineup, "contact test current A", String(row.object));

const corrects = (cell: CellValue | undefined) => !isBlank(cell) && cell !== NOT_CORRECTED;

const groupOf = (row: Row) => `${row.object}\u0000${row.part}`;

/** Contact resistance of each breaker pole, and resistance of each busbar joint between panels. */
export const contact: RecordKind = {
  id: "contact",
  title: "Contact resistance, breakers and busbar joints",
  sheet: "Contacts",
  table: "GearContact",
  purpose:
    "Four-wire DC resistance of each closed breaker pole and of each busbar joint, brought to 20 °C, judged against the maker's value; poles or joints that stand out from their neighbours ask for investigation.",
  cautions: [
    "Isolate, prove dead and earth under the site's permit system; racking and closing a breaker can move and crush.",
    "The test current flows through every closed path: keep current transformers' secondaries closed and protection blocked where the maker says so.",
    "Do not open the current circuit under test: an inductive circuit arcs.",
    "The maker's instruction and the local code come first.",
  ],
  columns: [
    { id: "object", header: "Panel", role: "key", width: 13 },
    { id: "part", header: "Part", role: "key", width: 16 },
    { id: "pole", header: "Pole", role: "key", width: 7 },
    { id: "ratedA", header: "Rated A", role: "given", width: 8, unit: "A" },
    {
      id: "testCurrent",
      header: "Test A DC",
      role: "entry",
      width: 9,
      unit: "A",
      accepts: { type: "number", least: 0, most: 10000 },
      need: "condition",
    },
    {
      id: "testCurrentLeast",
      header: "Least test A",
      role: "limit",
      width: 9,
      unit: "A",
      own: ownCurrent,
      formula: (_ref, lineup) => String(contactTestCurrent(lineup.basis).value),
      value: (_row, lineup) => contactTestCurrent(lineup.basis).value,
    },
    {
      id: "reading",
      header: "R µΩ",
      role: "entry",
      width: 10,
      unit: "µΩ",
      accepts: { type: "reading" },
      need: "reading",
      help: 'Number in µΩ, or as written with its unit: "0.042 mΩ".',
    },
    {
      id: "temperature",
      header: "Conductor °C",
      role: "entry",
      width: 11,
      unit: "°C",
      accepts: { type: "number", least: -40, most: 120 },
      need: "condition",
    },
    {
      id: "corrected",
      header: "R at 20 °C µΩ",
      role: "computed",
      width: 12,
      unit: "µΩ",
      format: "0.0",
      formula: (ref) =>
        `IF(OR(${blank(ref("reading"))},${blank(ref("temperature"))}),"",IFERROR(${gear("CONTACTCORRECT", ref("reading"), ref("temperature"))},"${NOT_CORRECTED}"))`,
      value: (row) => {
        if (isBlank(row.reading) || isBlank(row.temperature)) return null;
        const reading = quantity(row.reading, "µΩ");
        const temperature = exactly(row.temperature, "°C");
        if (!reading || temperature === undefined) return NOT_CORRECTED;
        const corrected = contactCorrect(reading.value, temperature);
        return corrected.ok
          ? bounded({ value: corrected.value, bound: reading.bound })
          : NOT_CORRECTED;
      },
      working: (row) => {
        const reading = quantity(row.reading, "µΩ");
        const temperature = exactly(row.temperature, "°C");
        return !reading || temperature === undefined || !corrects(row.corrected)
          ? ""
          : `${figure(bounded(reading))} µΩ × (${zeroResistance.copper} + 20) ÷ (${zeroResistance.copper} + ${figure(temperature)}) = ${figure(row.corrected)} µΩ`;
      },
    },
    {
      id: "maximum",
      header: "Maximum µΩ",
      role: "limit",
      width: 10,
      unit: "µΩ",
      own: ownLimit,
      help: "Where the lineup gives none, type the maker's value here.",
      value: (row) => row.maximum ?? null,
    },
    sources((row, lineup) => [
      ["maximum", sourceOf(ownLimit(row, lineup)) || TO_TYPE],
      ["test A", sourceOf(ownCurrent(row, lineup) ?? contactTestCurrent(lineup.basis))],
    ]),
    {
      id: "spread",
      header: "Above lowest",
      role: "computed",
      width: 9,
      format: "0 %",
      help: "Above the lowest of the three poles. More than 50 % asks for investigation; it is not by itself a failure.",
      // AGGREGATE compares names as they are; MINIFS would read a leading "=" as an operator.
      formula: (ref) =>
        `IF(N(${ref("corrected")})>0,${ref("corrected")}/_xlfn.AGGREGATE(15,6,${ref.all("corrected")}/((${ref.all("object")}=${ref("object")})*(${ref.all("part")}=${ref("part")})*(${ref.all("corrected")}>0)),1)-1,"")`,
      survey: lowestByGroup,
      value: (row, _lineup, lowest) => {
        const least = lowest.get(groupOf(row));
        return typeof row.corrected === "number" && row.corrected > 0 && least
          ? row.corrected / least - 1
          : null;
      },
      working: ({ corrected, spread }) =>
        typeof corrected === "number" && typeof spread === "number"
          ? `${figure(corrected)} µΩ ÷ ${figure(corrected / (1 + spread))} µΩ (lowest) − 1 = ${figure(spread * 100)} %`
          : "",
    },
    ...trail(),
    result(
      (ref) =>
        `IF(${blank(ref("reading"))},"Missing",IF(OR(${blank(ref("corrected"))},${blank(ref("maximum"))},NOT(ISNUMBER(${ref("testCurrent")}))),"Inconclusive",IF(${ref("testCurrent")}<N(${ref("testCurrentLeast")}),"Inconclusive",IFERROR(${gear("JUDGE", ref("corrected"), ref("maximum"), '"most"')},"Inconclusive"))))`,
      (row) => {
        if (isBlank(row.reading)) return "Missing";
        const { corrected, maximum, testCurrent, testCurrentLeast } = row;
        if (isBlank(corrected) || isBlank(maximum) || typeof testCurrent !== "number")
          return "Inconclusive";
        if (testCurrent < (typeof testCurrentLeast === "number" ? testCurrentLeast : 0))
          return "Inconclusive";
        return judged(corrected, maximum, "most");
      },
    ),
    ...closing(),
  ],
  rows: (lineup) => [
    ...lineup.panels.flatMap(({ designation, breaker }) =>
      breaker ? poles(designation, deviceName(breaker), breaker.ratedA) : [],
    ),
    ...busJoints(lineup).flatMap(({ left, right }) =>
      poles(left.designation, `Joint to ${right.designation}`, lineup.ratings.busbarA),
    ),
  ],
  after: [{ kind: "torque" }],
  accepted: [{ value: "corrected", limit: "maximum", unit: "µΩ", sense: "most" }],
  enough: [{ value: "testCurrent", limit: "testCurrentLeast", unit: "A", sense: "least" }],
  plot: { value: "corrected", limit: "maximum", unit: "µΩ", log: false },
};

const poles = (object: string, part: string, ratedA: CellValue): Row[] =>
  PHASES.map((pole) => ({ object, part, pole, ratedA }));

/** Least corrected resistance of each panel's breaker or joint. */
function lowestByGroup(rows: readonly Row[]): ReadonlyMap<string, number> {
  const lowest = new Map<string, number>();
  for (const row of rows) {
    if (typeof row.corrected !== "number" || row.corrected <= 0) continue;
    const group = groupOf(row);
    const sofar = lowest.get(group);
    if (sofar === undefined || row.corrected < sofar) lowest.set(group, row.corrected);
  }
  return lowest;
}
