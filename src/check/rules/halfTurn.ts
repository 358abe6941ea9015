import { isBlank } from "../../records/kind";
import { type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

/** Other angles that have to agree, and how closely; how near to half a turn is one (common practice, no source). */
const OTHERS = 3;
const AGREE = 30;

/** An angle about half a turn from all others: a polarity that is reversed. */
export const halfTurn: Rule = {
  id: "half-turn",
  reads: "table",
  find: (table, { text }) => {
    const { angle } = table.kind;
    if (!angle) return [];
    const read = anglesIn(table, angle);
    return read.flatMap(({ row, degrees }): Finding[] => {
      const others = read.filter((one) => one.row !== row).map((one) => one.degrees);
      const [middle = 0] = others;
      if (others.length < OTHERS || others.some((other) => apart(other, middle) > AGREE)) return [];
      if (apart(degrees, middle) < 180 - AGREE || !isBlank(table.rows[row]?.remarks)) return [];
      return [
        {
          rule: "half-turn",
          weight: "query",
          ...where(table, row, angle.column),
          message: text.rules["half-turn"].message(
            rowName(table, row),
            said(degrees),
            others.length,
            said(middle),
          ),
          found: degrees,
        },
      ];
    });
  },
};

const anglesIn = (
  { rows, aside }: JudgedTable,
  { column, turned }: NonNullable<JudgedTable["kind"]["angle"]>,
) =>
  rows.flatMap((row, index) => {
    const degrees = row[column];
    return typeof degrees === "number" && !aside.has(index) && !turned(row)
      ? [{ row: index, degrees }]
      : [];
  });

/** How far two angles lie apart the shorter way round, in degrees. */
const apart = (one: number, other: number): number => {
  const turn = (((one - other) % 360) + 360) % 360;
  return Math.min(turn, 360 - turn);
};
