import type { Lineup } from "../../lineup/lineup";
import type { Told } from "../../messages/told";
import { bounded } from "../../quantities/reading/bounded";
import type { Result } from "../../quantities/result";
import type { Criterion } from "../../standards/criterion";
import { type Column, type Comparison, isBlank, type Own, type Reference, type Row } from "../kind";
import { limitOf, sourceOf } from "../limits";
import { onPaper } from "../onPaper";
import { quantity } from "../quantity";
import { blank, gear, NOT_READ } from "./common";

/** A limit of a row: the maker's or project's own criterion, else the standard's or practice's. */
export interface Limit {
  readonly own: Own;
  readonly standard: (lineup: Lineup, row: Row) => Result<Criterion, Told>;
  /** The standard's value as a formula, where it differs from row to row. */
  readonly formula?: (ref: Reference, lineup: Lineup) => string;
  /** Where the standard's value by itself fails nothing: what a reading must miss as well to fail. */
  readonly floor?: (lineup: Lineup) => Criterion | undefined;
}

/** Source of a limit in one line. */
export const limitSource = ({ own, standard }: Limit, row: Row, lineup: Lineup): string =>
  sourceOf(own(row, lineup) ?? standard(lineup, row));

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

/** The direct voltage that insulation is measured at, and the least that it has to be. */
export const testVoltageColumns = (
  limit: Limit,
  { most = 15000, help }: { readonly most?: number; readonly help?: string } = {},
): Column[] => [
  {
    id: "testVoltage",
    header: "Test V DC",
    role: "entry",
    width: 9,
    unit: "V",
    wave: "DC",
    accepts: { type: "number", least: 1, most },
    need: "condition",
    ...(help === undefined ? {} : { help }),
  },
  {
    id: "testVoltageLeast",
    header: "Minimum test V",
    role: "limit",
    width: 9,
    unit: "V",
    own: limit.own,
    formula: formulaOf(limit),
    value: (row, lineup) => limitOf(limit.standard(lineup, row)),
  },
];

/** A resistance as it was read, in MΩ; not corrected to a temperature. */
export const asRead = (id: string, header: string, from: string): Column => ({
  id,
  header,
  role: "computed",
  width: 10,
  unit: "MΩ",
  format: "#,##0.##",
  formula: (ref) =>
    `IF(${blank(ref(from))},"",IFERROR(${gear("IRCORRECT", ref(from), 20, '"none"', 20)},"${NOT_READ}"))`,
  value: (row) => {
    if (isBlank(row[from])) return null;
    const read = quantity(row[from], "MΩ");
    return read && read.value >= 0 ? bounded(read) : NOT_READ;
  },
  working: (row) =>
    isBlank(row[id]) || row[id] === NOT_READ
      ? ""
      : `${onPaper(row[from])} = ${onPaper(row[id])} MΩ`,
});

/** The least insulation resistance. */
export const minimumColumn = (minimum: Limit): Column => ({
  id: "minimum",
  header: "Minimum MΩ",
  role: "limit",
  width: 9,
  unit: "MΩ",
  format: "0.0##",
  own: minimum.own,
  formula: formulaOf(minimum),
  value: (row, lineup) => limitOf(minimum.standard(lineup, row)),
});

/** Insulation resistance among the tests of one row: test voltage, reading, least value; not corrected to a temperature. */
export const insulationColumns = (minimum: Limit, testVoltage: Limit, help: string): Column[] => [
  ...testVoltageColumns(testVoltage),
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
  asRead("insulation", "R MΩ", "insulationRead"),
  minimumColumn(minimum),
  {
    id: "floor",
    header: "Fails below MΩ",
    role: "limit",
    width: 9,
    unit: "MΩ",
    format: "0.0##",
    help: "Between this and the minimum the insulation is looked into: neither passed nor failed. Blank where the minimum decides.",
    own: minimum.own,
    formula: (_ref, lineup) => String(minimum.floor?.(lineup)?.value ?? '""'),
    value: (_row, lineup) => minimum.floor?.(lineup)?.value ?? null,
  },
];
