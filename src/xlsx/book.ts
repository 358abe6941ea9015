import { BookError } from "../sheets/bookError";
import { openPackage, type Package } from "./package/package";
import { damaged } from "./package/readArchive";
import { partXml, type Relation, relationsOf } from "./package/relations";
import { childOf, childrenOf, isOn } from "./xml/readXml";

/** A sheet as the workbook lists it. */
export interface ListedSheet {
  readonly name: string;
  readonly hidden: boolean;
  /** `worksheet`, or what else it is: a sheet of a chart, a dialog, macros of before 1997. */
  readonly type: string;
  readonly part: string;
}

/** A workbook file opened: its package, and what its workbook part lists. */
export interface Book {
  readonly pack: Package;
  /** The workbook part. */
  readonly part: string;
  readonly relations: readonly Relation[];
  readonly sheets: readonly ListedSheet[];
  /** Whether its days are counted from 1904. */
  readonly from1904: boolean;
}

/**
 * Opens a workbook file.
 *
 * @throws {BookError} that says what the file is, where it is not a readable workbook
 */
export function openFile(file: Uint8Array): Book {
  const pack = openPackage(file);
  const part = relationsOf(pack, "").find(({ type }) => type === "officeDocument")?.part;
  if (!part || !pack.has(part)) throw damaged(({ book }) => book.why.namesNone);
  if (/\.bin$/i.test(part)) throw new BookError(({ book }) => book.binary);
  const book = bookOf(pack, part);
  if (book.sheets.length === 0) throw damaged((told) => told.book.why.noSheets);
  return book;
}

/** What the workbook part lists as it stands now. */
export function bookOf(pack: Package, part: string): Book {
  const root = partXml(pack, part);
  if (root.name !== "workbook") throw new BookError(({ book }) => book.otherDocument);
  const relations = relationsOf(pack, part);
  const sheets = childrenOf(childOf(root, "sheets"), "sheet").map(({ attributes }): ListedSheet => {
    const name = attributes.get("name") ?? "";
    const hidden = (attributes.get("state") ?? "visible") !== "visible";
    const named = attributes.get("id");
    // Sheets of macros leave a name behind, but no part, where a program took them out.
    if (!named) return { name, hidden, type: "none", part: "" };
    const relation = relations.find(({ id }) => id === named);
    if (!relation) throw damaged((told) => told.book.why.sheetMissing(name));
    return { name, hidden, type: relation.type, part: relation.part };
  });
  return {
    pack,
    part,
    relations,
    sheets,
    from1904: isOn(childOf(root, "workbookPr"), "date1904"),
  };
}

/** The sheets of cells; those of charts and dialogs have none. */
export const worksheetsOf = ({ sheets }: Book): ListedSheet[] =>
  sheets.filter(({ type }) => type === "worksheet");

/** The part that a workbook has one of, such as its styles. */
export const onePart = ({ pack, relations }: Book, type: string): string | undefined =>
  relations.find((one) => one.type === type && !one.external && pack.has(one.part))?.part;
