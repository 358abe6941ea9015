import { alikeRows, cellsOf } from "../../records/cellsOf";
import { type Column, keyIds, verdictOf } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { decimals, groupsIn, inOrder, median } from "../among/similar";
import { type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

/**
 * How far one phase may lie from the middle of its others before it is asked about (common practice, no
 * source): what three phases of one part feed or draw is nearly alike, as is what they charge, which is far
 * less where a lead was off; a current that leaks may be far less where a phase is shorter.
 */
const BURDEN = { above: 5, below: 5 } as const;
const CHARGING = { above: 4, below: 5 } as const;
const LEAKAGE = { above: 4, below: 15 } as const;
const WINDING = { above: 1.4, below: 1.4 } as const;
/** One pole below half of its others was measured past what it is of; one above them, another rule tells. */
const BRIDGED = { above: Number.POSITIVE_INFINITY, below: 2 } as const;
const INSULATION = { above: 25, below: 8 } as const;
/** Last digits of which the middle must have so many that a factor says something. */
const STEPS = 20;
/** Rows of like parts from which on a reading must stand out among them as well; with fewer, it must lie further out. */
const LIKE = 5;
const ALONE = 1.5;
/** Other phases beside it. */
const OTHERS = 2;

/** One phase whose burden, winding, insulation or charging current lies far from that of the other phases of its part. */
export const phasesApart: Rule = {
  id: "phases-apart",
  reads: "table",
  find: (table, { text }) => {
    const keys = keyIds(table.kind);
    const phase = keys.find((id) => id === "phase" || id === "pole");
    if (!phase) return [];
    const blocks = alikeRows(
      table.rows,
      keys.filter((id) => id !== phase),
      table.aside,
    ).filter(({ length }) => length > OTHERS);
    const says = text.rules["phases-apart"];
    return table.kind.columns.flatMap((column) => {
      const apart = apartIn(column);
      return apart === undefined
        ? []
        : straysIn(table, column, blocks, apart).map(
            ({ row, value, middle }): Finding => ({
              rule: "phases-apart",
              weight: "query",
              ...where(table, row, column.id),
              message: says.message(
                rowName(table, row),
                column.header,
                `${said(value)} ${column.unit}`,
                `${said(Number(middle.toPrecision(3)))} ${column.unit}`,
              ),
              found: value,
              expected: says.expected(said(Number(middle.toPrecision(3)))),
            }),
          );
    });
  },
};

interface Apart {
  readonly above: number;
  readonly below: number;
}

const APART: ReadonlyMap<string, Apart> = new Map<string, Apart>([
  ["VA", BURDEN],
  ["mA", CHARGING],
  ["µA", LEAKAGE],
  ["Ω", WINDING],
  ["MΩ", INSULATION],
  ["µΩ", BRIDGED],
]);

/** How far the phases of a column may lie apart; undefined of what says nothing by that. */
const apartIn = ({ role, unit }: Column): Apart | undefined => {
  if (role !== "entry") return undefined;
  return APART.get(unit ?? "");
};

interface Reading {
  readonly row: number;
  readonly value: number;
}

/** Of each part the phase that lies apart from its others, and from like parts. */
function straysIn(
  table: JudgedTable,
  column: Column,
  blocks: readonly (readonly number[])[],
  apart: Apart,
) {
  const cells = cellsOf(table.rows, column.id);
  const valueAt = (row: number): number | undefined =>
    column.unit ? exactly(cells[row] ?? null, column.unit) : undefined;
  const middleOfLike = middlesOfLike(table, valueAt);
  return blocks.flatMap((rows) => {
    const read = rows.flatMap((row): Reading[] => {
      const value = valueAt(row);
      return value !== undefined && value > 0 ? [{ row, value }] : [];
    });
    const strays = strayIn(read, apart).filter(({ row, value, middle }) => {
      if (verdictOf(table.judged[row] ?? {}) === "Fail") return false;
      const like = middleOfLike(row, value);
      return like === undefined
        ? isApart(value, middle, { above: apart.above * ALONE, below: apart.below * ALONE })
        : isApart(value, like, apart);
    });
    return strays.length === 1 ? strays : [];
  });
}

/** The readings that lie apart from the middle of the others of their part. */
function strayIn(read: readonly Reading[], apart: Apart) {
  if (read.length <= OTHERS) return [];
  const sorted = inOrder(read.map(({ value }) => value));
  return read.flatMap(({ row, value }) => {
    const middle = medianWithout(sorted, value);
    if (!isApart(value, middle, apart)) return [];
    const others = read.filter((one) => one.row !== row).map((one) => one.value);
    const isFine = middle >= STEPS * 10 ** -Math.max(...others.map(decimals));
    return isFine ? [{ row, value, middle }] : [];
  });
}

const isApart = (value: number, middle: number, { above, below }: Apart): boolean =>
  value > above * middle || value < middle / below;

/** Gives the middle of the other rows of the same ratings as one; undefined where they are too few. */
function middlesOfLike(table: JudgedTable, valueAt: (row: number) => number | undefined) {
  const { of } = groupsIn(table);
  const known = new Map<number | undefined, Float64Array>();
  const readingsLike = (group: number | undefined): Float64Array =>
    inOrder(
      of.reduce<number[]>((read, its, row) => {
        const value = its === group && !table.aside.has(row) ? valueAt(row) : undefined;
        if (value !== undefined) read.push(value);
        return read;
      }, []),
    );
  return (row: number, value: number): number | undefined => {
    const readings = known.get(of[row]) ?? readingsLike(of[row]);
    known.set(of[row], readings);
    return readings.length <= LIKE ? undefined : medianWithout(readings, value);
  };
}

/** The middle of numbers in order but for one of them. */
function medianWithout(sorted: Float64Array, one: number): number {
  const at = sorted.indexOf(one);
  return median(sorted.filter((_value, index) => index !== at));
}
