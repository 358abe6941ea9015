import type { Unit } from "../../quantities/units";
import { type Column, isBlank, type Row, verdictOf } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { amongRows, inRowOrder } from "../among/amongRows";
import {
  type Context,
  inUnit,
  type JudgedTable,
  overColumns,
  type Rule,
  rowName,
  said,
  where,
} from "../context";
import type { Finding } from "../findings/finding";

const INDICES: ReadonlySet<string> = new Set(["polarization", "absorption"]);
const MEGOHM: Unit = "MΩ";
/** Where readings are too high for an index, they fall by more than they are uncertain by only below this share (common practice, no source). */
const FALLEN = 0.8;

const indicesIn = ({ kind }: JudgedTable): Column[] =>
  kind.columns.filter(({ id, role }) => role === "computed" && INDICES.has(id));

/** An insulation resistance that falls while the voltage is held. */
export const indexBelowOne: Rule = {
  id: "index-below-one",
  reads: "row",
  among: (table) => {
    const indices = indicesIn(table);
    return inRowOrder([
      ...amongRows(table, indices, (_stored, index) => typeof index === "number" && index < 1),
      ...(indices.length > 0 ? amongFallen(table) : []),
    ]);
  },
  rows: (table, context) => {
    const text = context.text.rules["index-below-one"];
    const indices = indicesIn(table);
    const times = indices.length > 0 ? timesOf(table) : [];
    return (row, _stored, judged) => {
      if (verdictOf(judged) === "Fail") return undefined;
      const below = overColumns(indices, ({ id, header }) => {
        const index = judged[id];
        return typeof index === "number" && index < 1
          ? {
              rule: "index-below-one",
              weight: "query",
              ...where(table, row, id),
              message: text.message(rowName(table, row), header, said(index)),
              found: said(index),
              expected: text.expected,
            }
          : undefined;
      });
      return below ?? fallen(table, row, times, context, judged);
    };
  },
};

/** The columns of one test's readings, in the order of their times. */
const timesOf = ({ kind, at }: JudgedTable): Column[] =>
  kind.columns.filter(({ id, role, unit }) => role === "entry" && unit === MEGOHM && at.has(id));

/** The rows in which a time's reading is well below an earlier one, or is no plain number. */
function amongFallen(table: JudgedTable): readonly number[] {
  const highest = new Float64Array(table.rows.length);
  return amongRows(table, timesOf(table), (_stored, value, row) => {
    if (typeof value !== "number") return !isBlank(value);
    const before = highest[row] ?? 0;
    highest[row] = Math.max(before, value);
    return value < FALLEN * before;
  });
}

/** A reading well below an earlier one of the same test. */
function fallen(
  table: JudgedTable,
  row: number,
  times: readonly Column[],
  { text }: Context,
  judged: Row,
): Finding | undefined {
  const says = text.rules["index-below-one"];
  let highest: { readonly column: Column; readonly value: number } | undefined;
  for (const column of times) {
    const value = exactly(judged[column.id], MEGOHM);
    if (value === undefined) continue;
    if (highest && value < FALLEN * highest.value)
      return {
        rule: "index-below-one",
        weight: "query",
        ...where(table, row, column.id),
        message: says.fallen(
          rowName(table, row),
          column.header,
          inUnit(value, MEGOHM),
          highest.column.header,
          inUnit(highest.value, MEGOHM),
        ),
        found: said(value),
      };
    if (!highest || value > highest.value) highest = { column, value };
  }
  return undefined;
}
