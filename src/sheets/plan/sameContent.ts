import { isSameStored } from "../cells/cell";
import { type Snapshot, type TableSnapshot, tablesOf } from "../snapshot";

/**
 * Whether the tables of two snapshots of one workbook hold the same, cell by cell. Tables that were not
 * read again are the same objects and are not looked into.
 */
export function isSameContent(one: Snapshot, other: Snapshot): boolean {
  if (one === other) return true;
  const tables = new Map(tablesOf(one).map((table) => [table.name, table]));
  const others = tablesOf(other);
  return (
    tables.size === others.length &&
    one.sheets.length === other.sheets.length &&
    others.every((table) => {
      const known = tables.get(table.name);
      return known !== undefined && (known === table || isSameTable(known, table));
    })
  );
}

function isSameTable(one: TableSnapshot, other: TableSnapshot): boolean {
  if (one.rowCount !== other.rowCount || one.headers.join("\n") !== other.headers.join("\n"))
    return false;
  for (let row = 0; row < one.rowCount; row++)
    for (let column = 0; column < one.headers.length; column++)
      if (
        one.formula(row, column) !== other.formula(row, column) ||
        // What a formula comes to follows from the cells that people fill.
        (one.formula(row, column) === undefined &&
          !isSameStored(one.cell(row, column), other.cell(row, column)))
      )
        return false;
  return true;
}
