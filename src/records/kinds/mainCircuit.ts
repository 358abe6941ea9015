import { decisive } from "../../lineup/decisive";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { panelOf } from "../../lineup/panelOf";
import { itemLimit } from "../../lineup/plate";
import { storedWords } from "../../messages/told";
import { answer } from "../../quantities/result";
import { contactTestCurrent } from "../../standards/contactTestCurrent";
import { sourceText } from "../../standards/criterion";
import { circuitResistance } from "../../standards/iec62271-1.2017";
import { contactSpread } from "../../standards/practice";
import { tidy } from "../../standards/tidy";
import { closing, PHASES, trail } from "../columns/common";
import { givenLimit } from "../columns/measuredColumns";
import {
  enoughCurrent,
  leastTestCurrent,
  microOhmColumns,
  testCurrent,
  withinMaximum,
} from "../columns/microOhmColumns";
import { spreadAccepted, spreadColumn, spreadMostColumn } from "../columns/spreadColumns";
import { figure } from "../figure";
import type { Column, Comparison, Contradiction, RecordKind, Row } from "../kind";
import { asFraction, mostOf, ownOf, sourceOf, sources, stricterOf } from "../limits";
import { voidBy } from "../repairs";
import { verdictBy } from "../verdict";

const MAIN = "Main circuit";
const isMain = (row: Row) => row.part === MAIN;
const factor = (lineup: Lineup) => decisive(lineup, answer(circuitResistance));

/** Of the main circuit, 1.2 times what the type test had; of an earthing switch the maker's own. */
const plate = (row: Row, lineup: Lineup): OwnLimit | undefined => {
  const panel = panelOf(lineup, String(row.object));
  if (!isMain(row)) return itemLimit(panel?.earthingSwitch, panel?.earthingSwitch?.mostMicroOhm);
  const [found, typeTest] = [factor(lineup), panel?.circuit?.typeTestMicroOhm];
  if (!found.ok || typeTest === undefined) return undefined;
  const { value, source } = found.value;
  const document = `${value} × ${typeTest} µΩ of ${panel?.circuit?.document ?? "the type test"}, ${sourceText(source)}`;
  return { from: "maker", value: tidy(value * typeTest), document };
};
const ownLimit = stricterOf(
  "most",
  plate,
  mostOf(
    { name: "main circuit resistance µΩ", of: isMain },
    { name: "earthing switch resistance µΩ", of: (row) => !isMain(row) },
  ),
);
const ownCurrent = ownOf("contact test current A");
const ownSpread = asFraction(mostOf("contact spread %"));

const limitSource = (row: Row, lineup: Lineup): string => {
  const given = sourceOf(ownLimit(row, lineup));
  if (given !== "") return given;
  const like = `without it compared with the other poles, ${sourceOf(ownSpread(row, lineup) ?? contactSpread)}`;
  const found = factor(lineup);
  return isMain(row) && panelOf(lineup, String(row.object))?.circuit && !found.ok
    ? `${found.say(storedWords())}; ${like}`
    : `none given: type the maker's value here; ${like}`;
};

/** Where the type test is known, its factor decides and is confirmed first: poles alike are no proof against it. */
const isCompared = (row: Row, lineup: Lineup): boolean =>
  !(isMain(row) && panelOf(lineup, String(row.object))?.circuit);

const accepted: readonly Comparison[] = [withinMaximum, spreadAccepted];
const enough: readonly Comparison[] = [enoughCurrent];

const columns: readonly Column[] = [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: "Path", role: "key", width: 20 },
  { id: "pole", header: "Pole", role: "key", width: 7 },
  testCurrent,
  leastTestCurrent(ownCurrent, (_row, { basis }) => contactTestCurrent(basis).value),
  ...microOhmColumns,
  givenLimit("maximum", "Maximum µΩ", "µΩ", ownLimit),
  sources((row, lineup) => [
    ["maximum", limitSource(row, lineup)],
    ["test A", sourceOf(ownCurrent(row, lineup) ?? contactTestCurrent(lineup.basis))],
  ]),
  {
    id: "alike",
    header: "Compared with",
    role: "given",
    width: 24,
    value: ({ object, part }) => `${object} ${part}`,
  },
  spreadColumn({
    of: "corrected",
    unit: "µΩ",
    by: "alike",
    help: "How far the value lies above the lowest of the poles of the same path.",
  }),
  spreadMostColumn(ownSpread, isCompared),
  ...trail(),
];

/** Resistance of the whole main circuit of a panel and of its earthing switch, pole by pole. */
export const mainCircuit: RecordKind<"mainCircuit"> = {
  id: "mainCircuit",
  alsoCalled: ["main circuit resistance", "full circuit", "busbar to cable"],
  step: "devices",
  onRequest: true,
  sheet: "Main circuits",
  table: "GearCircuit",
  columns: [...columns, verdictBy(columns, accepted, enough), ...closing()],
  rows: (lineup) =>
    lineup.panels.flatMap(({ designation, breaker, earthingSwitch }) => [
      ...(breaker ? poles(designation, MAIN) : []),
      ...(earthingSwitch
        ? poles(designation, `Earthing switch ${earthingSwitch.designation}`)
        : []),
    ]),
  after: [{ kind: "contact" }],
  against: [
    {
      kind: "contact",
      own: (row) => (isMain(row) ? poleOf(row) : undefined),
      other: (row) => (String(row.part).startsWith("Joint") ? undefined : poleOf(row)),
      contradiction: partAboveWhole,
    },
  ],
  voidBy: voidBy(["Bus joint", "Circuit joint", "Breaker pole"]),
  accepted,
  enough,
  plot: { value: "corrected", limit: "maximum", unit: "µΩ", log: false },
};

const poleOf = ({ object, pole }: Row): string => `${object}\u0000${pole}`;

/** Two instruments and two temperatures may account for so much: common practice, no source. */
const WHOLE_LEAST = 0.9;

/** The pole of a breaker lies in the main circuit, and cannot resist more than the whole of it. */
function partAboveWhole(whole: Row, pole: Row): Contradiction | undefined {
  const [most, least] = [whole.corrected, pole.corrected];
  return typeof most === "number" && typeof least === "number" && most < WHOLE_LEAST * least
    ? {
        column: "corrected",
        why: "whole",
        found: `${figure(most)} µΩ`,
        other: `${figure(least)} µΩ`,
      }
    : undefined;
}

const poles = (object: string, part: string): Row[] =>
  PHASES.map((pole) => ({ object, part, pole }));
