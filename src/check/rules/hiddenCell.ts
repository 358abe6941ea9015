import type { Column } from "../../records/kind";
import type { SheetCells, Snapshot, Unseen } from "../../sheets/snapshot";
import { headerOf, type JudgedTable, type Rule, where, whereTable } from "../context";
import type { Finding } from "../findings/finding";

/** Readings and results that the sheet does not show as they are: hidden columns, text in the colour of its ground, formats with digits of their own. */
export const hiddenCell: Rule = {
  id: "hidden-cell",
  reads: "table",
  find: (table, { snapshot, text: { rules } }) => {
    const text = rules["hidden-cell"];
    const cells = seenIn(table, snapshot);
    if (!cells.unseen && !cells.isColumnHidden) return [];
    return table.kind.columns.flatMap((column): Finding[] => {
      const header = headerOf(table, column.id);
      const hidden = isRecorded(column) ? hiddenIn(table, cells, column.id) : undefined;
      if (hidden)
        return [
          {
            ...FINDING,
            ...whereTable(table),
            column: header,
            message: text.column(hidden.length, header),
          },
        ];
      return [...unseenIn(table, cells, column.id)].map(([why, rows]): Finding => {
        const [first = 0] = rows;
        const message = text[why](table.keys[first] ?? "", rows.length - 1, header);
        return { ...FINDING, ...where(table, first, column.id), message };
      });
    });
  },
};

type Seen = Pick<SheetCells, "unseen" | "isColumnHidden">;

/** What the sheet of a table tells of what is seen, or the table itself does. */
function seenIn({ table: { sheet, left, hiddenColumns } }: JudgedTable, snapshot: Snapshot): Seen {
  const cells = snapshot.sheets.find(({ name }) => name === sheet)?.cells;
  if (cells?.isColumnHidden || !hiddenColumns) return cells ?? {};
  return { unseen: cells?.unseen, isColumnHidden: (column) => hiddenColumns.has(column - left) };
}

const FINDING = { rule: "hidden-cell", weight: "query" } as const;

/** What no column may be hidden of: what was entered, and the result. */
const isRecorded = ({ role, id }: Column) => role === "entry" || id === "result";

/** The place on the sheet of a value of a row; undefined where the layout has none. */
function placeOf({ table, at }: JudgedTable, row: number, id: string) {
  const column = at.get(id);
  if (column === undefined) return undefined;
  if (table.ownLayout) return table.ownLayout.holds(row, column);
  return { row: table.top + 1 + row, column: table.left + column };
}

/** The rows of a column with something recorded, where all of it stands in hidden columns. */
function hiddenIn(table: JudgedTable, { isColumnHidden }: Seen, id: string) {
  if (!isColumnHidden) return undefined;
  const places = table.rows.flatMap((row, number) =>
    isEmpty(row[id]) ? [] : (placeOf(table, number, id) ?? []),
  );
  const isHidden = places.length > 0 && places.every(({ column }) => isColumnHidden(column));
  return isHidden ? places : undefined;
}

/** The rows of a column of which the value is not seen, by why. */
function unseenIn(table: JudgedTable, { unseen }: Seen, id: string) {
  const found = new Map<Unseen, number[]>();
  if (!unseen) return found;
  for (const [number, row] of table.rows.entries()) {
    const place = isEmpty(row[id]) ? undefined : placeOf(table, number, id);
    const why = place && unseen(place.row, place.column);
    if (!why) continue;
    const rows = found.get(why);
    if (rows) rows.push(number);
    else found.set(why, [number]);
  }
  return found;
}

const isEmpty = (value: unknown) => value === undefined || value === null || value === "";
