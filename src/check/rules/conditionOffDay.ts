import type { Unit } from "../../quantities/units";
import { rowsAlike } from "../../records/cellsOf";
import type { Row } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { dewLimit } from "../../standards/practice";
import { inRowOrder } from "../among/amongRows";
import { conditionsOf, departures, isFar, isHeated } from "../conditions";
import {
  type Context,
  inUnit,
  type JudgedTable,
  type Rule,
  rowName,
  said,
  where,
} from "../context";
import type { Finding } from "../findings/finding";
import { hangingOn } from "./verdictByCondition";

type Says = Context["text"]["rules"]["condition-off-day"];

/** Rows from which on a day is held against its others. */
const FEW = 5;
/** Air that is wetter or drier than this is not met where one tests (common practice). */
const HUMIDITY = { least: 5, most: 98 };
/** Gear that is out of service is neither hotter than this, nor so far from the air around it (common practice). */
const HOT = 55;
const APART = 15;

/** A temperature, humidity or pressure far from the other rows of its day and instrument, or one that cannot be. */
export const conditionOffDay: Rule = {
  id: "condition-off-day",
  reach: "table",
  reads: "table",
  find: (table, context) => {
    const { text, lineup } = context;
    const says = text.rules["condition-off-day"];
    const told = new Set(hangingOn(table, lineup).map(({ row }) => row));
    const far = departures(table)
      .filter((one) => isFar(one) && one.count >= FEW && !told.has(one.row))
      .filter(({ row }) => !isWet(table.judged[row] ?? {}))
      .map(
        ({ row, column, value, middle, count }): Finding => ({
          ...at(table, row, column.id),
          message: says.far(
            rowName(table, row),
            column.header,
            inUnit(value, column.unit),
            inUnit(middle, column.unit),
            count - 1,
          ),
          found: said(value),
          expected: said(middle),
        }),
      );
    const places = new Set(far.map(({ address }) => address));
    return [...far, ...odd(table, context, told).filter(({ address }) => !places.has(address))];
  },
};

const at = (table: JudgedTable, row: number, column: string) =>
  ({ rule: "condition-off-day", weight: "query", ...where(table, row, column) }) as const;

/** Of a surface at the dew point another rule speaks. */
const isWet = ({ dewMargin }: Row) => typeof dewMargin === "number" && dewMargin < dewLimit.value;

/** Conditions that are not met on site, alone or beside the others of their row. */
function odd(table: JudgedTable, { text }: Context, told: ReadonlySet<number>): Finding[] {
  const says = text.rules["condition-off-day"];
  const columns = conditionsOf(table);
  return amongOdd(table, says).flatMap((row): Finding[] => {
    const stored = table.rows[row] ?? {};
    if (table.aside.has(row) || told.has(row) || isWet(table.judged[row] ?? {})) return [];
    const air = exactly(stored.temperature, "°C");
    return columns.flatMap(({ id, unit, header }): Finding[] => {
      const value = exactly(stored[id], unit);
      if (value === undefined) return [];
      const why = whyOdd(id, unit, value, { air, heated: isHeated(table, row) }, says);
      return why === undefined
        ? []
        : [
            {
              ...at(table, row, id),
              message: says.odd(rowName(table, row), header, inUnit(value, unit), why),
              found: said(value),
            },
          ];
    });
  });
}

/** The rows that may hold such a condition, were nothing warmed. */
const amongOdd = (table: JudgedTable, says: Says): readonly number[] =>
  inRowOrder(
    conditionsOf(table).flatMap(({ id, unit }) =>
      rowsAlike(table.rows, [id, "temperature"], (row) => {
        const value = exactly(row[id], unit);
        const air = exactly(row.temperature, "°C");
        return (
          value !== undefined && whyOdd(id, unit, value, { air, heated: false }, says) !== undefined
        );
      }),
    ),
  );

/** Why a condition is not met on site; undefined where it is. */
const whyOdd = (
  id: string,
  unit: Unit,
  value: number,
  { air, heated }: { readonly air: number | undefined; readonly heated: boolean },
  says: Says,
): string | undefined => {
  if (unit === "%")
    return value > HUMIDITY.most || value < HUMIDITY.least ? says.humidity : undefined;
  if (unit !== "°C" || heated) return undefined;
  if (value > HOT) return says.hot;
  return id === "surface" && air !== undefined && Math.abs(value - air) > APART
    ? says.apart(said(air))
    : undefined;
};
