import type { PlannedSheet } from "../sheets/plan/plannedSheet";
import type { CellStyle } from "./cellStyle";
import { CAUTION, PURPOSE, TITLE } from "./look";
import { firstPage, pageOf, widthOf } from "./page";
import { cautionText, TITLE_WIDTH } from "./tableLayout";

/** A line above the table of a sheet, merged over its columns where these are more than one. */
export interface HeadLine {
  readonly text: string;
  readonly style: CellStyle;
  /** Columns, from 0. */
  readonly from: number;
  readonly to: number;
  /** Points. */
  readonly height: number;
}

/**
 * Title, purpose and cautions of a sheet, row by row. Where its key columns are printed again on a second
 * page, the title stands in these, and the rest beside them on the first page, so that no line is cut.
 */
export function headOf(planned: PlannedSheet): readonly HeadLine[] {
  const { columns, title, purpose, cautions, papers } = planned;
  const { repeated } = pageOf(columns, papers);
  const to = Math.min(columns.length, firstPage(columns, papers), repeated + TITLE_WIDTH) - 1;
  const widthTo = (from: number, last: number) =>
    columns.slice(from, last + 1).reduce((sum, column) => sum + widthOf(column), 0);
  const linesIn = (text: string, width: number) => Math.max(1, Math.ceil(text.length / width));
  const width = widthTo(repeated, to) * 0.85;
  const titleTo = Math.max(repeated, 1) - 1;
  return [
    {
      text: title,
      style: repeated > 0 ? { ...TITLE, alignment: { vertical: "top", wrapText: true } } : TITLE,
      from: 0,
      to: titleTo,
      height: repeated > 0 ? 4 + 20 * linesIn(title, widthTo(0, titleTo) * 0.5) : 24,
    },
    { text: purpose, style: PURPOSE, from: repeated, to, height: 15 * linesIn(purpose, width) + 2 },
    {
      text: cautionText(planned),
      style: cautions.length > 0 ? CAUTION : PURPOSE,
      from: repeated,
      to,
      height:
        cautions.length === 0
          ? 6
          : 14 * cautions.reduce((sum, line) => sum + linesIn(line, width), 0) + 4,
    },
  ];
}
