import { ratioError } from "../../engineering/ratioError";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import type { Told } from "../../messages/told";
import { answer, type Result } from "../../quantities/result";
import type { Criterion } from "../../standards/criterion";
import { grossRatio } from "../../standards/practice";
import { secondaryInsulation as secondaryCriteria } from "../../standards/secondaryInsulation";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type Own,
  type Row,
} from "../kind";
import { leastOf, mostOf, ownOf, sourceOf, stricterOf, strictestOf } from "../limits";
import { onPaper, workedOut } from "../onPaper";
import { exactly } from "../quantity";
import { blank, gear, NOT_COMPUTED, quoted } from "./common";
import { insulationColumns, type Limit, limitSource } from "./insulationColumns";

const transformerMinimum: Limit = {
  own: leastOf("transformer insulation MΩ"),
  standard: (lineup) => answer(secondaryCriteria(lineup).minimum),
  floor: (lineup) => secondaryCriteria(lineup).floor,
};
const transformerTestVoltage: Limit = {
  own: ownOf("transformer test voltage V"),
  standard: (lineup) => answer(secondaryCriteria(lineup).testVoltage),
};

export const secondaryInsulation = (): Column[] =>
  insulationColumns(
    transformerMinimum,
    transformerTestVoltage,
    'Secondary winding to earth, primary and other windings, after 1 min, its earth lifted: a number in MΩ, or as written: "> 2 GΩ".',
  );

/** The maker's or project's own limit of the ratio error: for a class that gives none, or where it is finer than the class. */
export const finerThanClass = (
  quantity: string,
  ofClass: (accuracy: string) => Result<Criterion, Told>,
): Own => {
  const named = mostOf(quantity);
  return Object.assign(
    (row: Row, lineup: Lineup) => {
      const own = named(row, lineup);
      const found = ofClass(String(row.accuracy ?? ""));
      return own && found.ok && own.value > found.value.value ? undefined : own;
    },
    { quantities: named.quantities },
  );
};

/** Sources of what every transformer is judged by besides its ratio error. */
export const transformerSources = (
  burdenMost: Column,
  row: Row,
  lineup: Lineup,
): (readonly [limit: string, source: string])[] => [
  ["minimum", limitSource(transformerMinimum, row, lineup)],
  ["test V", limitSource(transformerTestVoltage, row, lineup)],
  ["burden", plateSource(burdenMost, row, lineup)],
];

export const polarity: Column = {
  id: "polarity",
  header: "Polarity",
  role: "entry",
  width: 10,
  accepts: { type: "list", values: ["As marked", "Reversed"], right: "As marked" },
  need: "condition",
  help: "Against the terminal marks and the drawing.",
};

const numeric = (cell: CellValue | undefined) => (typeof cell === "number" ? cell : 0);

/**
 * What is applied in percent of the rated value, and the ratio error. The columns `primary` and
 * `secondary` are read, `ratedPrimary` and `ratedSecondary` are given by the plate.
 *
 * @param turns word of the column `method` for a ratio read by voltage, of which there is no percentage
 */
export const ratioColumns = (unit: "A" | "V", turns?: string): Column[] => [
  {
    id: "percent",
    header: "Of rated %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.0",
    formula: (ref) => {
      const applied = gear("QUANTITY", ref("primary"), quoted(unit));
      const asRead = `IF(OR(${blank(ref("primary"))},NOT(N(${ref("ratedPrimary")})>0)),"",IFERROR(${applied}/${ref("ratedPrimary")}*100,""))`;
      return turns === undefined ? asRead : `IF(${ref("method")}=${quoted(turns)},"",${asRead})`;
    },
    value: ({ primary, ratedPrimary, method }) => {
      const applied = exactly(primary, unit);
      if (turns !== undefined && String(method ?? "").toLowerCase() === turns.toLowerCase())
        return null;
      return applied !== undefined && numeric(ratedPrimary) > 0
        ? (applied / numeric(ratedPrimary)) * 100
        : null;
    },
    working: ({ primary, ratedPrimary, percent }) =>
      workedOut(
        percent,
        `${onPaper(exactly(primary, unit))} ${unit} ÷ ${onPaper(ratedPrimary)} ${unit} × 100`,
        "%",
      ),
  },
  {
    id: "error",
    header: "Ratio error %",
    role: "computed",
    width: 9,
    unit: "%",
    format: "0.00#",
    formula: (ref) => {
      const [applied, read] = ["primary", "secondary"].map((id) =>
        gear("QUANTITY", ref(id), quoted(unit)),
      ) as [string, string];
      return `IF(OR(${blank(ref("primary"))},${blank(ref("secondary"))}),"",IFERROR(${gear("RATIOERROR", applied, read, `N(${ref("ratedPrimary")})/N(${ref("ratedSecondary")})`)},"${NOT_COMPUTED}"))`;
    },
    value: ({ primary, secondary, ratedPrimary, ratedSecondary }) => {
      if (isBlank(primary) || isBlank(secondary)) return null;
      const [applied, read] = [exactly(primary, unit), exactly(secondary, unit)];
      const ratio = numeric(ratedPrimary) / numeric(ratedSecondary);
      const found =
        applied !== undefined && read !== undefined ? ratioError(applied, read, ratio) : undefined;
      return found?.ok ? found.value : NOT_COMPUTED;
    },
    working: ({ primary, secondary, ratedPrimary, ratedSecondary, error }) =>
      workedOut(
        error,
        `(${onPaper(ratedPrimary)}/${onPaper(ratedSecondary)} × ${onPaper(exactly(secondary, unit))} ${unit} − ${onPaper(exactly(primary, unit))} ${unit}) ÷ ${onPaper(exactly(primary, unit))} ${unit} × 100`,
        "%",
      ),
  },
];

/**
 * A limit that the plate of a transformer gives, or the maker's or project's criterion of this name, whichever is stricter; where the
 * plate is known and neither gives one, its row has no need of it.
 */
export const plateColumn = <P extends object>(
  column: Pick<Column, "id" | "header" | "width" | "unit" | "format" | "help">,
  plateOf: (row: Row, lineup: Lineup) => P | undefined,
  pick: (plate: P) => number | undefined,
  [sense, quantity]: readonly ["least" | "most", string],
): Column => ({
  ...column,
  role: "limit",
  own: stricterOf(
    sense,
    (row, lineup) => plateFigure(plateOf(row, lineup), pick),
    strictestOf(sense, quantity),
  ),
  value: (row, lineup) => (plateOf(row, lineup) ? NOT_APPLICABLE : null),
});

const plateFigure = <P extends object>(
  plate: P | undefined,
  pick: (plate: P) => number | undefined,
): OwnLimit | undefined => {
  const value = plate && pick(plate);
  return value === undefined ? undefined : { from: "maker", value, document: "its plate" };
};

/** Where a plate's limit comes from. */
export const plateSource = (column: Column, row: Row, lineup: Lineup): string =>
  sourceOf(column.own?.(row, lineup)) || "none on the plate: not judged by it";

export const burdenAccepted: Comparison = {
  value: "burden",
  limit: "burdenMost",
  unit: "VA",
  sense: "most",
  excusable: true,
};

/** Below this part of its rated burden a class promises nothing: the test proves nothing of it. */
export const burdenEnough: Comparison = {
  value: "burden",
  limit: "burdenLeast",
  unit: "VA",
  sense: "least",
  excusable: true,
};

/** The ratio error against its class; beyond 10 % the ratio is wrong whatever the test was made with. */
export const ratioAccepted: readonly Comparison[] = [
  { value: "error", limit: "errorMost", unit: "%", sense: "within", lenient: "errorWrong" },
  { value: "error", limit: "ratioWrong", unit: "%", sense: "within", outright: true },
];

/** The phase displacement, where somebody measured it and the class limits it. */
export const displacementAccepted: Comparison = {
  value: "displacement",
  limit: "displacementMost",
  sense: "within",
  excusable: true,
  when: "displacement",
};

/**
 * Phase displacement, and what the class allows of it where the ratio was taken.
 *
 * @param formula of the class's limit in the row, an error where there is none
 */
export const displacementColumns = (
  quantity: string,
  formula: NonNullable<Column["formula"]>,
  value: (row: Row) => CellValue,
): Column[] => [
  {
    id: "displacement",
    header: "Displacement min",
    role: "entry",
    width: 12,
    accepts: { type: "number", least: -5400, most: 5400 },
    help: "Minutes of arc, where the test set shows it; may stay blank: the row then shows the ratio alone.",
  },
  {
    id: "displacementMost",
    header: "Allowed ± min",
    role: "limit",
    width: 12,
    own: mostOf(quantity),
    help: "n/a where the class limits none there.",
    formula: (ref, lineup) => `IFERROR(${formula(ref, lineup)},"${NOT_APPLICABLE}")`,
    value: (row) => value(row) ?? NOT_APPLICABLE,
  },
];

/** The tap of a transformer that has several. */
export const tapInUse: Column = {
  id: "tap",
  header: "Tap in use",
  role: "entry",
  width: 9,
  accepts: { type: "text" },
  help: "Terminals that are connected, where the plate has several ratios; the ratio is judged by that of the lineup.",
};

/** The ratio error beyond which a transformer has another ratio than its plate says. */
export const ratioWrong: Column = {
  id: "ratioWrong",
  header: "Wrong ratio beyond ± %",
  role: "limit",
  width: 9,
  unit: "%",
  formula: () => String(grossRatio.value),
  value: () => grossRatio.value,
};

export const burden: Column = {
  id: "burden",
  header: "Burden VA",
  role: "entry",
  width: 9,
  unit: "VA",
  accepts: { type: "number", least: 0, most: 1000 },
  need: "condition",
  needed: ({ burdenMost }) => typeof burdenMost === "number",
  help: "Connected burden with its leads, at rated secondary value.",
};
