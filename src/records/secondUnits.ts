import type { Unit } from "../quantities/units";
import { blank, gear, quoted } from "./columns/common";
import { figure } from "./figure";
import type { Column } from "./kind";
import { exactly } from "./quantity";

interface Second {
  /** As a header has it. */
  readonly header: string;
  readonly unit: Unit;
  readonly of: (value: number) => number;
  readonly formula: (value: string) => string;
  readonly format: string;
}

const IN = 25.4;
const PSI = 0.006894757293168;
const INHG = 3.386389;

/** What American practice reads beside a unit of a record: the international inch, pound and inch of mercury at 0 °C of NIST SP 811. */
const SECOND: Partial<Record<Unit, Second>> = {
  "°C": {
    header: "°F",
    unit: "°F",
    of: (value) => (value * 9) / 5 + 32,
    formula: (value) => `${value}*9/5+32`,
    format: "0.0",
  },
  mm: {
    header: "inch",
    unit: "in",
    of: (value) => value / IN,
    formula: (value) => `${value}/${IN}`,
    format: "0.00",
  },
  MPa: {
    header: "psi",
    unit: "psi",
    of: (value) => value / PSI,
    formula: (value) => `${value}/${PSI}`,
    format: "0.0",
  },
  kPa: {
    header: "inHg",
    unit: "inHg",
    of: (value) => value / INHG,
    formula: (value) => `${value}/${INHG}`,
    format: "0.00",
  },
};

/** The same quantity in the second unit, worked out from the column beside it. */
const beside = ({ id, header, unit, width }: Column, second: Second): Column => ({
  id: `${id}${second.header}`,
  header: header.replace(String(unit), second.header),
  role: "computed",
  width,
  format: second.format,
  aside: true,
  formula: (ref) =>
    `IF(${blank(ref(id))},"",IFERROR(${second.formula(gear("QUANTITY", ref(id), quoted(String(unit))))},""))`,
  value: (row) => {
    const value = unit && exactly(row[id], unit);
    return value === undefined ? null : second.of(value);
  },
  working: (row) => {
    const value = row[`${id}${second.header}`];
    return typeof value === "number"
      ? `${figure(exactly(row[id], unit as Unit))} ${unit} = ${figure(value)} ${second.unit}`
      : "";
  },
});

/**
 * The columns of a record in American practice: beside what is entered or allowed in °C, mm, MPa and kPa (of
 * the air) the same in °F, inch, psi and inHg. An entry is typed in either: 25, or 77 °F.
 */
export const withSecondUnits = (columns: readonly Column[]): readonly Column[] =>
  columns.flatMap((column) => {
    const { role, unit, header } = column;
    const second = unit && SECOND[unit];
    return second && (role === "entry" || role === "limit") && header.includes(unit)
      ? [withHelp(column, second), beside(column, second)]
      : [column];
  });

const withHelp = (column: Column, { unit }: Second): Column =>
  column.role === "entry"
    ? { ...column, help: `${column.help ? `${column.help} ` : ""}Or with its unit: in ${unit}.` }
    : column;
