import type { CellValue } from "../../src/records/kind";

export type Columns = Record<string, Record<string, CellValue[]>>;

/** Where two computations of the same columns differ: beyond 1e-9 relative for numbers, at all for text. */
export function differences(ours: Columns, theirs: Columns): string[] {
  const found: string[] = [];
  for (const [table, columns] of Object.entries(ours))
    for (const [id, values] of Object.entries(columns))
      values.forEach((value, row) => {
        const other = theirs[table]?.[id]?.[row] ?? null;
        if (!alike(value, other))
          found.push(`${table} ${id} row ${row}: ${value} against ${other}`);
      });
  return found;
}

const alike = (one: CellValue, other: CellValue) =>
  typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : (one === "" ? null : one) === (other === "" ? null : other);
