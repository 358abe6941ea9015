import type { CellWrite } from "../sheets/cells/cell";
import type { TableSnapshot } from "../sheets/snapshot";
import { openFile } from "./book";
import { fillTable } from "./fillTable";
import { partXml, relationsOf } from "./package/relations";
import { BookEdit } from "./patch/bookEdit";
import { placeChild } from "./patch/placeChild";
import { understood } from "./readBook";
import { edited } from "./xml/editText";
import { childOf, childrenOf } from "./xml/readXml";

/**
 * A copy of a workbook in which values stand in place of the tables' formulas, so that it reads alike
 * everywhere, and whose sheets are protected against slips, without a password.
 *
 * @param tables the values of the cells that hold formulas, and what else is written
 */
export const freezeBook = (
  file: Uint8Array,
  tables: readonly {
    readonly table: TableSnapshot;
    readonly writes: readonly CellWrite[];
    readonly added?: number;
  }[],
): Promise<Uint8Array> =>
  understood(async () => {
    const book = new BookEdit(openFile(file));
    for (const { table, writes, added = 0 } of tables) fillTable(book, { table, writes, added });
    for (const { name, part } of book.worksheets) freezeSheet(book, name, part);
    return book.save();
  });

function freezeSheet(book: BookEdit, name: string, part: string): void {
  for (const one of relationsOf(book.pack, part))
    if (one.type === "table") dropFormulas(book, one.part);
  const sheet = book.sheet(name);
  if (!sheet || childOf(sheet.root, "sheetProtection")) return;
  const tag = `<${sheet.root.prefix}sheetProtection sheet="1" autoFilter="0" sort="0" formatColumns="0" formatRows="0"/>`;
  sheet.edit(placeChild(sheet.text, sheet.root, "sheetProtection", tag));
}

/** Takes from a table what it gives to rows that are added. */
function dropFormulas({ pack }: BookEdit, part: string): void {
  const columns = childrenOf(childOf(partXml(pack, part), "tableColumns"), "tableColumn");
  const edits = columns.flatMap((column) => {
    const there = childOf(column, "calculatedColumnFormula");
    return there ? [{ from: there.start, to: there.end, text: "" }] : [];
  });
  if (edits.length > 0) pack.put(part, edited(pack.text(part), edits));
}
