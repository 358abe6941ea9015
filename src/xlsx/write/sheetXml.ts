import { toCol } from "@borgar/fx/xlsx";
import type { CellStyle, ConditionalRule } from "../../look/cellStyle";
import { a1 } from "../../sheets/cells/address";
import { areaAddress } from "../../sheets/cells/area";
import { officeRelation } from "../package/relations";
import { cellXml } from "../patch/cellXml";
import { attributesXml, type Styles } from "../patch/styles";
import type { Texts } from "../patch/texts";
import { rowHeight, type WrappedCell } from "../rowHeight";
import { elementText } from "../xml/editText";
import type { DraftCell, DraftPage, SheetDraft } from "./sheetDraft";
import { validationXml } from "./validationXml";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const RELATIONS = officeRelation("").slice(0, -1);

/** What of a workbook a new sheet is written with. */
export interface WriteWith {
  readonly styles: Styles;
  readonly texts: Texts;
  /** A number as the workbook keeps it, where it counts its days otherwise. */
  readonly stored: (value: number, style: CellStyle | undefined) => number;
}

/** Ids of the relationships to a sheet's tables, and to the frames of its notes. */
export interface SheetRelations {
  readonly tables: readonly string[];
  readonly frames?: string;
}

/** A sheet's part in pieces: before its rows, each row, and behind them. */
export function* sheetXml(
  draft: SheetDraft,
  relations: SheetRelations,
  given: WriteWith,
): Generator<string> {
  yield beforeRows(draft);
  const formulas = new Map<string, string>();
  for (const [row, cells] of draft.rows) yield rowOf(draft, row, cells, given, formulas);
  yield behindRows(draft, relations, given);
}

const beforeRows = (draft: SheetDraft): string =>
  [
    `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<worksheet xmlns="${MAIN}" xmlns:r="${RELATIONS}">`,
    draft.page ? '<sheetPr><pageSetUpPr fitToPage="1"/></sheetPr>' : "",
    viewXml(draft),
    '<sheetFormatPr defaultRowHeight="15"/>',
    columnsXml(draft.widths),
    "<sheetData>",
  ].join("");

function behindRows(
  { page, merges, validations, rules }: SheetDraft,
  { tables, frames }: SheetRelations,
  given: WriteWith,
): string {
  const list = (name: string, items: readonly string[]) =>
    items.length === 0 ? "" : `<${name} count="${items.length}">${items.join("")}</${name}>`;
  return [
    "</sheetData>",
    list(
      "mergeCells",
      merges.map((area) => `<mergeCell ref="${areaAddress(area)}"/>`),
    ),
    rules.map((rule) => ruleXml("", rule, given.styles)).join(""),
    list(
      "dataValidations",
      validations.map((one) => validationXml("", one)),
    ),
    page ? pageXml(page) : "",
    frames === undefined ? "" : `<legacyDrawing r:id="${frames}"/>`,
    list(
      "tableParts",
      tables.map((id) => `<tablePart r:id="${id}"/>`),
    ),
    "</worksheet>",
  ].join("");
}

function viewXml({ gridLines, frozen }: SheetDraft): string {
  const attributes = attributesXml({ showGridLines: gridLines ? undefined : 0, workbookViewId: 0 });
  const { rows = 0, columns = 0 } = frozen ?? {};
  if (rows === 0 && columns === 0) return `<sheetViews><sheetView${attributes}/></sheetViews>`;
  const pane = rows > 0 && columns > 0 ? "bottomRight" : rows > 0 ? "bottomLeft" : "topRight";
  const split = attributesXml({
    xSplit: columns || undefined,
    ySplit: rows || undefined,
    topLeftCell: a1(rows, columns),
    activePane: pane,
    state: "frozen",
  });
  return `<sheetViews><sheetView${attributes}><pane${split}/><selection pane="${pane}"/></sheetView></sheetViews>`;
}

const columnsXml = (widths: readonly number[]): string =>
  widths.length === 0
    ? ""
    : `<cols>${widths
        .map(
          (width, at) => `<col min="${at + 1}" max="${at + 1}" width="${width}" customWidth="1"/>`,
        )
        .join("")}</cols>`;

/** @param formulas elements of formulas by their text, which are the same in row after row */
function rowOf(
  draft: SheetDraft,
  row: number,
  cells: ReadonlyMap<number, DraftCell>,
  { styles, texts, stored }: WriteWith,
  formulas: Map<string, string>,
): string {
  const wrapped: WrappedCell[] = [];
  let text = "";
  for (const [column, { value, formula, style }] of cells) {
    const number = style ? styles.cell(style) : 0;
    if (style?.alignment?.wrapText) wrapped.push({ value, width: draft.widths[column] ?? 9 });
    const said = typeof value === "number" ? stored(value, style) : value;
    text += cellXml(
      "",
      ` r="${a1(row, column)}"${number > 0 ? ` s="${number}"` : ""}`,
      formula === undefined
        ? { value: said }
        : { value: said, formula: { xml: formulaXml(formula, formulas) } },
      texts.add,
    );
  }
  return `<row r="${row + 1}"${heightOf(draft, row, wrapped)}>${text}</row>`;
}

function formulaXml(formula: string, known: Map<string, string>): string {
  const before = known.get(formula);
  if (before !== undefined) return before;
  const xml = `<f>${elementText(formula)}</f>`;
  known.set(formula, xml);
  return xml;
}

/** A height that somebody set, or one that its text asks for, which a spreadsheet may change. */
function heightOf(draft: SheetDraft, row: number, wrapped: readonly WrappedCell[]): string {
  const set = draft.heights.get(row);
  if (set !== undefined) return ` ht="${set}" customHeight="1"`;
  const inTable = draft.tables.some(({ area }) => row > area.top && row <= area.bottom);
  const asked = inTable ? rowHeight(wrapped) : undefined;
  return asked === undefined ? "" : ` ht="${asked}"`;
}

/** A conditional format as a file writes it. */
export function ruleXml(p: string, rule: ConditionalRule, styles: Styles): string {
  const attributes = attributesXml({
    type: rule.type,
    dxfId: styles.conditional(rule.style),
    priority: rule.priority,
    operator: rule.operator,
  });
  return `<${p}conditionalFormatting sqref="${rule.range}"><${p}cfRule${attributes}><${p}formula>${elementText(rule.formula)}</${p}formula></${p}cfRule></${p}conditionalFormatting>`;
}

/** Numbers of paper sizes (ECMA-376 part 1, 18.3.1.63). */
const PAPER = { letter: 1, tabloid: 3, a3: 8, a4: 9 } as const;

const pageXml = ({ paper, across, footer }: DraftPage): string =>
  `<pageMargins left="0.4" right="0.4" top="0.5" bottom="0.6" header="0.3" footer="0.3"/><pageSetup paperSize="${PAPER[paper]}" orientation="landscape" fitToWidth="${across}" fitToHeight="0"/><headerFooter><oddFooter>${elementText(footer)}</oddFooter></headerFooter>`;

/** The cells that stand on every page, as the workbook names them (ECMA-376 part 1, 18.2.5). */
export function printTitles(sheet: string, { titleRow, titleColumns }: DraftPage): string {
  const quoted = `'${sheet.replaceAll("'", "''")}'!`;
  const rows = `${quoted}$${titleRow + 1}:$${titleRow + 1}`;
  return titleColumns > 0 ? `${quoted}$A:$${toCol(titleColumns - 1)},${rows}` : rows;
}
