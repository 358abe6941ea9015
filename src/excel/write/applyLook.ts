import { toCol } from "@borgar/fx/xlsx";
import type { CellStyle } from "../../look/cellStyle";
import { headOf } from "../../look/head";
import { body, header, resultRules } from "../../look/look";
import { keysOf, pageOf, points, widthOf } from "../../look/page";
import { HEADER_HEIGHT, HEADER_ROW, lastRow } from "../../look/tableLayout";
import type { Column } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import { OBJECT_BYTES, type Step } from "./chunks";

const INCH = 72;
const PAPER = { a4: "A4", a3: "A3", letter: "Letter", tabloid: "Tabloid" } as const;

/** How a sheet of the plan looks: widths, heights, fonts, fills, lines, number formats, page. */
export function lookSteps(
  sheet: () => Excel.Worksheet,
  planned: PlannedSheet,
  rows: number,
): Step[] {
  const { columns } = planned;
  const end = lastRow(rows);
  const { paper, across, repeated } = pageOf(columns, planned.papers);
  const bodyArea = (at: number) => `${a1(HEADER_ROW + 1, at)}:${a1(end, at)}`;
  const step = (objects: number, queue: (sheet: Excel.Worksheet) => void): Step => ({
    bytes: objects * OBJECT_BYTES,
    queue: () => queue(sheet()),
  });
  const styled = (areas: ReadonlyMap<string, { style: CellStyle; addresses: string[] }>): Step[] =>
    [...areas.values()].map(({ style, addresses }) =>
      step(12, (sheet) => applyStyle(sheet.getRanges(addresses.join(",")).untrack().format, style)),
    );
  return [
    step(12, (sheet) => {
      sheet.showGridlines = false;
      const table = sheet.tables.getItem(planned.table);
      table.style = "TableStyleLight1";
      table.showBandedRows = false;
      headOf(planned).forEach(({ style, from, to, height }, row) => {
        const first = sheet.getRange(a1(row, from)).untrack();
        applyStyle(first.format, style);
        first.format.rowHeight = height;
        if (from < to)
          sheet
            .getRange(`${a1(row, from)}:${a1(row, to)}`)
            .untrack()
            .merge(false);
      });
      sheet.getRange(a1(HEADER_ROW, 0)).untrack().format.rowHeight = HEADER_HEIGHT;
    }),
    ...[...grouped(columns, (column) => String(widthOf(column)))].map(([width, at]) =>
      step(3, (sheet) => {
        const addresses = at.map((column) => `${toCol(column)}:${toCol(column)}`);
        sheet.getRanges(addresses.join(",")).untrack().format.columnWidth = points(Number(width));
      }),
    ),
    ...styled(byStyle(columns, header, (at) => a1(HEADER_ROW, at))),
    ...styled(byStyle(columns, (column) => ({ ...body(column), numFmt: undefined }), bodyArea)),
    ...columns.flatMap(({ format }, at) =>
      format
        ? [
            step(2, (sheet) => {
              sheet.getRange(bodyArea(at)).untrack().numberFormat = every(format);
            }),
          ]
        : [],
    ),
    step(12, (sheet) => {
      sheet.freezePanes.freezeAt(`A1:${a1(HEADER_ROW, Math.max(keysOf(columns), 1) - 1)}`);
      const page = sheet.pageLayout;
      page.orientation = "Landscape";
      page.paperSize = PAPER[paper];
      page.zoom = { horizontalFitToPages: across };
      page.setPrintTitleRows(`$${HEADER_ROW + 1}:$${HEADER_ROW + 1}`);
      if (repeated > 0) page.setPrintTitleColumns(`$A:$${toCol(repeated - 1)}`);
      page.leftMargin = 0.4 * INCH;
      page.rightMargin = 0.4 * INCH;
      page.topMargin = 0.5 * INCH;
      page.bottomMargin = 0.6 * INCH;
      page.headerMargin = 0.3 * INCH;
      page.footerMargin = 0.3 * INCH;
      const { defaultForAllPages } = page.headersFooters;
      defaultForAllPages.leftFooter = "&A";
      defaultForAllPages.centerFooter = "&F";
      defaultForAllPages.rightFooter = "Page &P of &N";
    }),
  ];
}

/** Colours of the result column, in place of what stood on it of ours. */
export function resultSteps(
  sheet: () => Excel.Worksheet,
  { columns }: PlannedSheet,
  rows: number,
): Step[] {
  const result = columns.findIndex(({ role }) => role === "result");
  if (result < 0) return [];
  const area = `${a1(HEADER_ROW + 1, result)}:${a1(lastRow(rows), result)}`;
  return [
    {
      bytes: 30 * OBJECT_BYTES,
      queue: () => {
        const formats = sheet().getRange(area).untrack().conditionalFormats;
        formats.clearAll();
        // The last one added comes first.
        for (const { formula, style } of resultRules(area).reverse()) {
          const { cellValue } = formats.add("CellValue");
          cellValue.format.fill.color = `#${style?.fill?.type === "pattern" ? style.fill.bgColor?.rgb : ""}`;
          cellValue.format.font.color = `#${style?.font?.color?.rgb}`;
          cellValue.rule = { formula1: `=${formula}`, operator: "EqualTo" };
        }
      },
    },
  ];
}

/** One value for every cell of a range: Excel takes it in place of a whole grid of them. */
export const every = (value: string): string[][] => value as unknown as string[][];

function grouped<T>(items: readonly T[], key: (item: T) => string): Map<string, number[]> {
  const groups = new Map<string, number[]>();
  items.forEach((item, at) => {
    const group = groups.get(key(item)) ?? [];
    group.push(at);
    groups.set(key(item), group);
  });
  return groups;
}

/** Columns of one style are styled together. */
const byStyle = (
  columns: readonly Column[],
  style: (column: Column) => CellStyle,
  address: (at: number) => string,
): Map<string, { style: CellStyle; addresses: string[] }> =>
  new Map(
    [...grouped(columns, (column) => JSON.stringify(style(column)))].map(([key, at]) => [
      key,
      { style: JSON.parse(key) as CellStyle, addresses: at.map(address) },
    ]),
  );

const ALIGNED = { left: "Left", center: "Center", right: "Right" } as const;
const STANDING = { top: "Top", center: "Center", bottom: "Bottom" } as const;
const EDGES = [
  "EdgeTop",
  "EdgeBottom",
  "EdgeLeft",
  "EdgeRight",
  "InsideHorizontal",
  "InsideVertical",
] as const;

function applyStyle(format: Excel.RangeFormat, { font, fill, alignment, border }: CellStyle) {
  if (font?.name) format.font.name = font.name;
  if (font?.size) format.font.size = font.size;
  if (font?.bold) format.font.bold = true;
  if (font?.color?.rgb) format.font.color = `#${font.color.rgb}`;
  if (fill?.type === "pattern" && fill.fgColor?.rgb) format.fill.color = `#${fill.fgColor.rgb}`;
  const { horizontal, vertical, wrapText } = alignment ?? {};
  if (horizontal && horizontal in ALIGNED)
    format.horizontalAlignment = ALIGNED[horizontal as keyof typeof ALIGNED];
  if (vertical && vertical in STANDING)
    format.verticalAlignment = STANDING[vertical as keyof typeof STANDING];
  if (wrapText) format.wrapText = true;
  if (border)
    for (const edge of EDGES) {
      const line = format.borders.getItem(edge);
      line.style = "Continuous";
      line.color = `#${border.top?.color?.rgb}`;
    }
}
