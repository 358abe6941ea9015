import type { SheetCells } from "../../sheets/snapshot";
import { excelCode } from "./errorWords";

/** What stands beside the values of a sheet. */
export type Beside = Pick<SheetCells, "merges" | "note">;

/** A sheet that is asked what stands beside its values, with what the next round trip brings. */
interface Asked {
  readonly joined: readonly Excel.RangeAreas[];
  readonly notes: readonly (Excel.CommentCollection | Excel.NoteCollection)[];
}

/** Whether this Excel has a set of the published interface. */
export const hasSet = (version: string): boolean =>
  typeof Office === "undefined" || Office.context.requirements.isSetSupported("ExcelApi", version);

/** Excel gives no more than 512 joined areas of one range; where a sheet has more, so many rows are asked at once. */
const BAND = 100;

/** Asks for the joined cells and the notes of a sheet, as far as this Excel tells them. */
const ask = (sheet: Excel.Worksheet, bands: readonly Excel.Range[]): Asked => {
  const joined = hasSet("1.13")
    ? bands.map((range) => {
        const found = range.getMergedAreasOrNullObject();
        found.areas.load("items/rowIndex,items/columnIndex,items/rowCount,items/columnCount");
        return found;
      })
    : [];
  const notes = [
    ...(hasSet("1.10") ? [sheet.comments] : []),
    // An Excel that has them may still run a client that has not.
    ...(hasSet("1.18") && "notes" in sheet ? [sheet.notes] : []),
  ];
  for (const one of notes) one.load("items/content");
  return { joined, notes };
};

/**
 * The joined cells, notes and comments of sheets: one round trip, one more where there are notes, and two
 * more for sheets with more joined cells than Excel gives at once.
 */
export async function besides(
  context: Excel.RequestContext,
  sheets: readonly Excel.Worksheet[],
): Promise<ReadonlyMap<Excel.Worksheet, Beside>> {
  let asked = sheets.map((sheet) => ask(sheet, [sheet.getUsedRange().untrack()]));
  try {
    await context.sync();
  } catch (error) {
    if (excelCode(error) === undefined) throw error;
    const used = sheets.map((sheet) => sheet.getUsedRange().untrack());
    for (const range of used) range.load("rowCount,columnCount");
    await context.sync();
    asked = sheets.map((sheet, at) => ask(sheet, bandsOf(sheet, used[at] as Excel.Range)));
    await context.sync();
  }
  const placed = asked.map(({ notes }) =>
    notes.flatMap(({ items }) =>
      items.map((note: Excel.Comment | Excel.Note) => {
        const cell = note.getLocation().untrack();
        cell.load("rowIndex,columnIndex");
        return { text: note.content, cell };
      }),
    ),
  );
  if (placed.some(({ length }) => length > 0)) await context.sync();
  return new Map(
    sheets.map((sheet, at) => {
      const texts = new Map(
        placed[at]?.map(({ text, cell }) => [`${cell.rowIndex},${cell.columnIndex}`, text]),
      );
      const merges = (asked[at]?.joined ?? []).flatMap((found) =>
        found.isNullObject
          ? []
          : found.areas.items.map(({ rowIndex, columnIndex, rowCount, columnCount }) => ({
              top: rowIndex,
              left: columnIndex,
              bottom: rowIndex + rowCount - 1,
              right: columnIndex + columnCount - 1,
            })),
      );
      return [sheet, { merges, note: (row, column) => texts.get(`${row},${column}`) }];
    }),
  );
}

const bandsOf = (sheet: Excel.Worksheet, { rowCount, columnCount }: Excel.Range): Excel.Range[] =>
  Array.from({ length: Math.ceil(rowCount / BAND) }, (_, at) =>
    sheet
      .getUsedRange()
      .untrack()
      .getCell(at * BAND, 0)
      .untrack()
      .getResizedRange(Math.min(BAND, rowCount - at * BAND) - 1, columnCount - 1)
      .untrack(),
  );
