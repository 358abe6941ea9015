import type { Lineup } from "../../lineup/lineup";
import { bounded } from "../../quantities/bounded";
import type { Result } from "../../quantities/result";
import type { Criterion } from "../../standards/criterion";
import { type Column, type Comparison, isBlank, type Reference, type Row } from "../kind";
import { limitOf, ownOf, sourceOf } from "../limits";
import { onPaper } from "../onPaper";
import { quantity } from "../quantity";
import { blank, gear } from "./common";

const NOT_READ = "not read";

/** A limit of a row: the maker's or project's own criterion, else the standard's or practice's. */
export interface Limit {
  readonly own: string;
  readonly standard: (lineup: Lineup, row: Row) => Result<Criterion>;
  /** The standard's value as a formula, where it differs from row to row. */
  readonly formula?: (ref: Reference, lineup: Lineup) => string;
  /** Where the standard's value by itself fails nothing: what a reading must miss as well to fail. */
  readonly floor?: (lineup: Lineup) => Criterion | undefined;
}

/** Source of a limit in one line. */
export const limitSource = ({ own, standard }: Limit, row: Row, lineup: Lineup): string =>
  sourceOf(ownOf(own)(row, lineup) ?? standard(lineup, row));

export const insulationAccepted: Comparison = {
  value: "insulation",
  limit: "minimum",
  unit: "MΩ",
  sense: "least",
  lenient: "floor",
};

export const insulationEnough: Comparison = {
  value: "testVoltage",
  limit: "testVoltageLeast",
  unit: "V",
  sense: "least",
};

/** The formula of a standard's value; one that is the same in all rows stands as a number. */
const formulaOf =
  ({ formula, standard }: Limit) =>
  (ref: Reference, lineup: Lineup): string =>
    formula?.(ref, lineup) ?? String(limitOf(standard(lineup, {})) ?? '""');

/** Insulation resistance among the tests of one row: test voltage, reading, least value; not corrected to a temperature. */
export const insulationColumns = (minimum: Limit, testVoltage: Limit, help: string): Column[] => [
  {
    id: "testVoltage",
    header: "Test V DC",
    role: "entry",
    width: 9,
    unit: "V",
    wave: "DC",
    accepts: { type: "number", least: 1, most: 15000 },
    need: "condition",
  },
  {
    id: "testVoltageLeast",
    header: "Minimum test V",
    role: "limit",
    width: 9,
    unit: "V",
    own: ownOf(testVoltage.own),
    formula: formulaOf(testVoltage),
    value: (row, lineup) => limitOf(testVoltage.standard(lineup, row)),
  },
  {
    id: "insulationRead",
    header: "Insulation MΩ",
    role: "entry",
    width: 12,
    unit: "MΩ",
    accepts: { type: "reading" },
    need: "reading",
    help,
  },
  {
    id: "insulation",
    header: "R MΩ",
    role: "computed",
    width: 10,
    unit: "MΩ",
    format: "#,##0.##",
    formula: (ref) =>
      `IF(${blank(ref("insulationRead"))},"",IFERROR(${gear("IRCORRECT", ref("insulationRead"), 20, '"none"', 20)},"${NOT_READ}"))`,
    value: (row) => {
      if (isBlank(row.insulationRead)) return null;
      const read = quantity(row.insulationRead, "MΩ");
      return read && read.value >= 0 ? bounded(read) : NOT_READ;
    },
    working: ({ insulationRead, insulation }) =>
      isBlank(insulation) || insulation === NOT_READ
        ? ""
        : `${onPaper(insulationRead)} = ${onPaper(insulation)} MΩ`,
  },
  {
    id: "minimum",
    header: "Minimum MΩ",
    role: "limit",
    width: 9,
    unit: "MΩ",
    format: "0.0##",
    own: ownOf(minimum.own),
    formula: formulaOf(minimum),
    value: (row, lineup) => limitOf(minimum.standard(lineup, row)),
  },
  {
    id: "floor",
    header: "Fails below MΩ",
    role: "limit",
    width: 9,
    unit: "MΩ",
    format: "0.0##",
    help: "Between this and the minimum the insulation is looked into: neither passed nor failed. Blank where the minimum decides.",
    own: ownOf(minimum.own),
    formula: (_ref, lineup) => String(minimum.floor?.(lineup)?.value ?? '""'),
    value: (_row, lineup) => minimum.floor?.(lineup)?.value ?? null,
  },
];
