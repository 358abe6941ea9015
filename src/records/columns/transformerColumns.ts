import { ratioError } from "../../engineering/ratioError";
import type { Lineup } from "../../lineup/lineup";
import type { OwnLimit } from "../../lineup/ownCriterion";
import { readPlain } from "../../quantities/readPlain";
import { controlMinimum, controlTestVoltage } from "../../standards/controlWiring";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type Row,
} from "../kind";
import { onPaper, workedOut } from "../onPaper";
import { blank, gear } from "./common";
import { insulationColumns, type Limit } from "./insulationColumns";

const NOT_COMPUTED = "not computed";

/** A secondary winding is insulated, and tested, as the control wiring that it feeds (practice). */
export const transformerMinimum: Limit = {
  own: "transformer insulation MΩ",
  standard: ({ ratings }) => controlMinimum(ratings.controlV ?? 0),
};
export const transformerTestVoltage: Limit = {
  own: "transformer test voltage V",
  standard: () => controlTestVoltage,
};

export const secondaryInsulation = (): Column[] =>
  insulationColumns(
    transformerMinimum,
    transformerTestVoltage,
    'Secondary winding to earth, primary and other windings, after 1 min, its earth lifted: a number in MΩ, or as written: "> 2 GΩ".',
  );

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
 */
export const ratioColumns = (unit: "A" | "V"): Column[] => [
  {
    id: "percent",
    header: "Of rated %",
    role: "computed",
    width: 8,
    unit: "%",
    format: "0.0",
    formula: (ref) =>
      `IF(AND(ISNUMBER(${ref("primary")}),N(${ref("ratedPrimary")})>0),${ref("primary")}/${ref("ratedPrimary")}*100,"")`,
    value: ({ primary, ratedPrimary }) =>
      typeof primary === "number" && numeric(ratedPrimary) > 0
        ? (primary / numeric(ratedPrimary)) * 100
        : null,
    working: ({ primary, ratedPrimary, percent }) =>
      workedOut(
        percent,
        `${onPaper(primary)} ${unit} ÷ ${onPaper(ratedPrimary)} ${unit} × 100`,
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
    formula: (ref) =>
      `IF(OR(${blank(ref("primary"))},${blank(ref("secondary"))}),"",IFERROR(${gear("RATIOERROR", ref("primary"), ref("secondary"), `N(${ref("ratedPrimary")})/N(${ref("ratedSecondary")})`)},"${NOT_COMPUTED}"))`,
    value: ({ primary, secondary, ratedPrimary, ratedSecondary }) => {
      if (isBlank(primary) || isBlank(secondary)) return null;
      const [applied, read] = [readPlain(primary), readPlain(secondary)];
      const ratio = numeric(ratedPrimary) / numeric(ratedSecondary);
      const found =
        applied.ok && read.ok ? ratioError(applied.value, read.value, ratio) : undefined;
      return found?.ok ? found.value : NOT_COMPUTED;
    },
    working: ({ primary, secondary, ratedPrimary, ratedSecondary, error }) =>
      workedOut(
        error,
        `(${onPaper(ratedPrimary)}/${onPaper(ratedSecondary)} × ${onPaper(secondary)} ${unit} − ${onPaper(primary)} ${unit}) ÷ ${onPaper(primary)} ${unit} × 100`,
        "%",
      ),
  },
];

/** A limit that the plate of a transformer gives; where the plate is known and gives none, its row has no need of it. */
export const plateColumn = <P extends object>(
  column: Pick<Column, "id" | "header" | "width" | "unit" | "format" | "help">,
  plateOf: (row: Row, lineup: Lineup) => P | undefined,
  pick: (plate: P) => number | undefined,
): Column => ({
  ...column,
  role: "limit",
  own: (row, lineup) => plateFigure(plateOf(row, lineup), pick),
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
export const plateSource = (limit: CellValue | undefined): string =>
  typeof limit === "number" ? "its plate (maker)" : "none on the plate: not judged by it";

export const burdenAccepted: Comparison = {
  value: "burden",
  limit: "burdenMost",
  unit: "VA",
  sense: "most",
  excusable: true,
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
