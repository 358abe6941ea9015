import { fromCol } from "@borgar/fx/xlsx";
import type { CellValue } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import {
  appendTo,
  attributeText,
  type Edit,
  edited,
  elementText,
  removed,
  setAttribute,
} from "../xml/editText";
import { childOf, childrenOf, readXml, type XmlElement } from "../xml/readXml";
import { type CellContent, cellXml, type TextNumber } from "./cellXml";

/** What becomes of a cell. */
export interface CellPatch {
  /** Undefined: what it holds stays. */
  readonly value: CellValue | undefined;
  readonly formula?: string;
  /** Whether its formula is the one that is there, which then stays as it is written. */
  readonly kept: boolean;
  readonly style?: number;
  /** Whether the cell goes, its look with it. */
  readonly gone?: boolean;
  /** A formula that others take from this cell from now on. */
  readonly shared?: { readonly number: number; readonly area: string; readonly text: string };
}

export interface RowPatch {
  readonly row: number;
  readonly attributes: Map<string, string>;
  readonly cells: Map<number, CellPatch>;
}

/** A new row. */
export function rowXml(
  p: string,
  { row, attributes, cells }: RowPatch,
  number: TextNumber,
): string {
  const said = [...attributes]
    .map(([name, value]) => ` ${name}="${attributeText(value)}"`)
    .join("");
  const inOrder = [...cells].sort(([one], [other]) => one - other);
  const text = inOrder.map(([column, patch]) => newCell(p, row, column, patch, number)).join("");
  return `<${p}row r="${row + 1}"${said}>${text}</${p}row>`;
}

function newCell(p: string, row: number, column: number, patch: CellPatch, number: TextNumber) {
  const style = patch.style ? ` s="${patch.style}"` : "";
  if (patch.gone || (patch.value === null && patch.formula === undefined && style === ""))
    return "";
  return cellXml(p, ` r="${a1(row, column)}"${style}`, contentOf(patch), number);
}

const contentOf = ({ value = null, formula }: CellPatch): CellContent =>
  formula === undefined ? { value } : { value, formula: { text: formula } };

/** A row as it stands in a file, with some of its cells and attributes changed. */
export function patchedRow(xml: string, patch: RowPatch, number: TextNumber): string {
  const root = readXml(xml);
  const cells = childrenOf(root, "c");
  const columns = columnsOf(cells);
  const edits: Edit[] = [...patch.attributes].map(([name, value]) =>
    setAttribute(xml, root, name, value),
  );
  const added: string[] = [];
  for (const [column, cell] of [...patch.cells].sort(([one], [other]) => one - other)) {
    const there = cells[columns.lastIndexOf(column)];
    if (cell.gone) {
      if (there) edits.push(removed(there));
      continue;
    }
    if (there) {
      edits.push({
        from: there.start,
        to: there.end,
        text: changedCell(xml, there, { row: patch.row, column }, cell, number),
      });
      continue;
    }
    const text = newCell(root.prefix, patch.row, column, styledAs(root, cell), number);
    const next = cells[columns.findIndex((one) => one > column)];
    if (next) edits.push({ from: next.start, to: next.start, text });
    else added.push(text);
  }
  if (added.some((text) => text !== "")) edits.push(appendTo(xml, root, added.join("")));
  return edited(xml, [...edits, ...spans(xml, root, patch)]);
}

/** A new cell looks as its row does, where nothing else is said. */
const styledAs = (row: XmlElement, cell: CellPatch): CellPatch =>
  cell.style === undefined && row.attributes.has("customFormat")
    ? { ...cell, style: Number(row.attributes.get("s") ?? 0) }
    : cell;

/** The columns of a row's cells; one that says none is the next. */
export function columnsOf(cells: readonly XmlElement[]): number[] {
  let column = -1;
  return cells.map(({ attributes }) => {
    const letters = /^[A-Z]+/i.exec(attributes.get("r") ?? "")?.[0];
    column = letters ? fromCol(letters.toUpperCase()) : column + 1;
    return column;
  });
}

/** Attributes that say of a cell's value what a new value is not. */
const OF_VALUE = ["t", "vm", "ph"];

function changedCell(
  xml: string,
  cell: XmlElement,
  { row, column }: { row: number; column: number },
  patch: CellPatch,
  number: TextNumber,
): string {
  const formula = childOf(cell, "f");
  if (patch.value === undefined) return withShared(xml, cell, formula, patch);
  let tag = `${xml.slice(cell.start, cell.inner).replace(/\s*\/?>$/, "")}>`;
  const gone = patch.kept ? OF_VALUE : [...OF_VALUE, "cm"];
  for (const name of gone)
    tag = tag.replace(new RegExp(`\\s${name}\\s*=\\s*("[^"]*"|'[^']*')`), "");
  const attributes = tag.slice(tag.indexOf("<") + cell.prefix.length + 2, -1);
  const r = cell.attributes.has("r") ? "" : ` r="${a1(row, column)}"`;
  const content: CellContent = patch.kept
    ? keptContent(xml, cell, formula, patch)
    : contentOf(patch);
  return cellXml(cell.prefix, `${r}${attributes}`, content, number);
}

/** A new value under the formula that is there; a cell within an array has none of its own. */
function keptContent(
  xml: string,
  cell: XmlElement,
  formula: XmlElement | undefined,
  patch: CellPatch,
): CellContent {
  const { value = null, shared } = patch;
  const text = shared
    ? sharedXml(cell.prefix, shared)
    : formula
      ? xml.slice(formula.start, formula.end)
      : "";
  return { value, formula: { xml: text } };
}

const sharedXml = (p: string, { number, area, text }: NonNullable<CellPatch["shared"]>): string =>
  `<${p}f t="shared" ref="${area}" si="${number}">${elementText(text)}</${p}f>`;

/** A cell as it is, but for the formula that it now holds for others. */
function withShared(
  xml: string,
  cell: XmlElement,
  formula: XmlElement | undefined,
  { shared }: CellPatch,
): string {
  const text = xml.slice(cell.start, cell.end);
  if (!shared || !formula) return text;
  return edited(text, [
    {
      from: formula.start - cell.start,
      to: formula.end - cell.start,
      text: sharedXml(cell.prefix, shared),
    },
  ]);
}

/** Columns that a row says it uses, as far as its new cells reach. */
function spans(xml: string, row: XmlElement, { cells }: RowPatch): Edit[] {
  const found = /^(\d+):(\d+)$/.exec(row.attributes.get("spans") ?? "");
  if (!found) return [];
  const gone = [...cells].flatMap(([column, cell]) => (cell.gone ? [column] : []));
  const columns = [...cells.keys()].map((column) => column + 1);
  if (gone.length > 0) return narrower(xml, row, found, new Set(gone));
  const first = Math.min(Number(found[1]), ...columns);
  const last = Math.max(Number(found[2]), ...columns);
  const said = `${first}:${last}`;
  return said === found[0] ? [] : [setAttribute(xml, row, "spans", said)];
}

/** The columns that a row says it uses, back to the last that it has. */
function narrower(
  xml: string,
  row: XmlElement,
  [, first = "1", last = "1"]: RegExpExecArray,
  gone: ReadonlySet<number>,
): Edit[] {
  const left = columnsOf(childrenOf(row, "c")).filter((column) => !gone.has(column));
  const most = Math.max(Number(first), ...left.map((column) => column + 1));
  return most < Number(last) && gone.has(Number(last) - 1)
    ? [setAttribute(xml, row, "spans", `${first}:${most}`)]
    : [];
}
