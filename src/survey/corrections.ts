import type { Area } from "../sheets/cells/area";
import { readArea } from "../sheets/cells/area";
import type { Correction } from "../sheets/kept/surveyAnswers";
import type { SurveyColumn } from "./find/block";
import type { FoundTable } from "./find/findTables";
import type { Cell, SheetView } from "./read/cells";
import { CONCEPTS, type Concept } from "./words/words";

/** Said of a column: it is nothing that the check looks at. */
export const NOTHING = "nothing";
/** Said of a row: it holds the titles of a table. */
export const HEAD = "head";
/** Said of a row of a table: all of it is of this record kind, as `kind:contact`. */
const KIND = /^kind:(\w+)$/;

/** A place that somebody pointed at, in rows and columns of the view. */
interface Pointed {
  readonly row: number;
  readonly column: number;
  readonly is: string;
}

/** What somebody has said of the cells of one sheet. */
export interface SheetCorrections {
  readonly heads: readonly Pointed[];
  readonly kinds: readonly Pointed[];
  readonly columns: readonly Pointed[];
  readonly cells: readonly Pointed[];
}

/** What was said of a sheet, as the view has its rows and columns. */
export function correctionsOn(
  { name, turned }: Pick<SheetView, "name" | "turned">,
  corrections: readonly Correction[],
): SheetCorrections {
  const here = corrections.flatMap(({ sheet, address, of, is }) => {
    const area = sheet === name ? readArea(address) : undefined;
    return area ? [{ of, is, ...placeOf(area, turned) }] : [];
  });
  const ofRows = here.filter(({ of }) => of === "row");
  return {
    heads: ofRows.filter(({ is }) => is === HEAD),
    kinds: ofRows.filter(({ is }) => KIND.test(is)),
    columns: here.filter(({ of }) => of === "column"),
    cells: here.filter(({ of }) => of === "cell"),
  };
}

const placeOf = ({ top, left }: Area, turned: boolean) =>
  turned ? { row: left, column: top } : { row: top, column: left };

const conceptSaid = (is: string): Concept | undefined => CONCEPTS.find((one) => one === is);

const covers = ({ top, bottom, left, right }: FoundTable, { row, column }: Pointed): boolean =>
  row >= top && row <= bottom && column >= left && column <= right;

/** The columns of a table as somebody has put them right; the last word on one counts. */
export function correctedColumns(
  columns: readonly SurveyColumn[],
  table: FoundTable,
  said: SheetCorrections,
): readonly SurveyColumn[] {
  const kind = said.kinds.findLast((one) => covers(table, one));
  const id = kind && KIND.exec(kind.is)?.[1];
  return columns.map((column) => {
    const own = said.columns.findLast((one) => one.column === column.at && covers(table, one));
    const put = own === undefined ? column : asSaid(column, own.is);
    return id === undefined ? put : { ...put, kind: id };
  });
}

const asSaid = (column: SurveyColumn, is: string): SurveyColumn => {
  const { concept: _, ...others } = column;
  const concept = conceptSaid(is);
  if (is === NOTHING) return { ...others, numbers: false };
  if (concept === undefined) return column;
  return concept === "reading"
    ? { ...others, concept, computed: false, numbers: true }
    : { ...others, concept };
};

/** Cells that somebody pointed at, by what they are; they hold for lines that say none themselves. */
export const pointedCells = (
  view: SheetView,
  { cells }: SheetCorrections,
): Partial<Record<Concept, Cell>> =>
  Object.fromEntries(
    cells.flatMap(({ row, column, is }) => {
      const cell = view.at(row, column);
      const concept = conceptSaid(is);
      return cell && concept ? [[concept, cell]] : [];
    }),
  );
