import { contactSpread } from "../../standards/practice";
import { figure } from "../figure";
import { type Column, type Comparison, NOT_APPLICABLE, type Own, type Row } from "../kind";

/** What is compared with its like. */
export interface Likeness {
  /** Id of the computed column that is compared, and its unit. */
  readonly of: string;
  readonly unit: "µΩ" | "mΩ";
  /** Id of the column whose cells are the same for what is alike. */
  readonly by: string;
  /** The one word of that column whose rows are compared; without it, those of every word. */
  readonly only?: string;
  readonly help: string;
}

/** Where no maximum is given, a value that stands out from its like asks for an explanation. */
export const spreadAccepted: Comparison = {
  value: "spread",
  limit: "spreadMost",
  sense: "most",
  excusable: true,
  insteadOf: "maximum",
  asks: true,
};

/** How far a value lies above the lowest of its like. */
export const spreadColumn = ({ of, unit, by, only, help }: Likeness): Column => {
  const isIn = (row: Row) => only === undefined || row[by] === only;
  const measured = (row: Row): number | undefined => {
    const value = row[of];
    return isIn(row) && typeof value === "number" && value > 0 ? value : undefined;
  };
  return {
    id: "spread",
    header: "Above lowest",
    role: "computed",
    width: 9,
    format: "0 %",
    help,
    // AGGREGATE compares names as they are; MINIFS would read a leading "=" as an operator.
    formula: (ref) => {
      const like = (place: number) =>
        `_xlfn.AGGREGATE(15,6,${ref.all(of)}/((${ref.all(by)}=${ref(by)})*(${ref.all(of)}>0)),${place})`;
      const there = `N(${ref(of)})>0`;
      return `IF(${only === undefined ? there : `AND(${ref(by)}="${only}",${there})`},IFERROR(${ref(of)}/${like(1)}-1+0*${like(2)},""),"")`;
    },
    survey: (rows) => lowestBy(rows, by, measured),
    value: (row, _lineup, lowest) => {
      const [value, least] = [measured(row), lowest.get(String(row[by]))];
      return value !== undefined && least ? value / least - 1 : null;
    },
    working: (row) => {
      const { spread } = row;
      const value = row[of];
      return typeof value === "number" && typeof spread === "number"
        ? `${figure(value)} ${unit} ÷ ${figure(value / (1 + spread))} ${unit} (lowest) − 1 = ${figure(spread * 100)} %`
        : "";
    },
  };
};

/** The spread above which an explanation is asked for; n/a for rows that are not compared. */
export const spreadMostColumn = (
  own: Own,
  isCompared: (...of: Parameters<NonNullable<Column["value"]>>) => boolean,
): Column => ({
  id: "spreadMost",
  header: "Asks above",
  role: "limit",
  width: 8,
  own,
  help: "Judged by where neither maker nor project gives a maximum; n/a where the row is not compared.",
  value: (...of) => (isCompared(...of) ? contactSpread.value : NOT_APPLICABLE),
});

/** The least value of each group of which two or more are measured. */
export function lowestBy(
  rows: readonly Row[],
  by: string,
  measured: (row: Row) => number | undefined,
): ReadonlyMap<string, number> {
  const groups = new Map<string, number[]>();
  for (const row of rows) {
    const value = measured(row);
    if (value === undefined) continue;
    const group = groups.get(String(row[by])) ?? [];
    groups.set(String(row[by]), group);
    group.push(value);
  }
  return new Map(
    [...groups].flatMap(([name, group]) =>
      group.length > 1 ? [[name, Math.min(...group)] as const] : [],
    ),
  );
}
