import {
  type BesideTable,
  besideArea,
  freeBesideNames,
  isBesideName,
} from "../../sheets/besideTable";
import { BookError } from "../../sheets/bookError";
import { areaAddress, overlap } from "../../sheets/cells/area";
import { asInput } from "../read/cellValues";
import { inWords } from "../read/errorWords";
import { enteredFormula } from "../read/storedFormula";
import { inBatches, OBJECT_BYTES, type Step, sentBytes, type Watched } from "./chunks";

type Named = ReturnType<typeof besideArea>;

/** A name of the workbook by which cells of ours are found, and what it refers to. */
interface Ours {
  readonly item: Excel.NamedItem;
  readonly place: Named;
}

/** Asks for the names of the workbook; those of ours are there after the next round trip. */
export function askBeside({ workbook }: Excel.RequestContext): {
  readonly all: () => readonly string[];
  readonly ours: () => readonly Ours[];
} {
  const { names } = workbook;
  names.load("items/name,items/formula");
  return {
    all: () => names.items.map(({ name }) => name),
    ours: () =>
      names.items.flatMap((item) =>
        isBesideName(item.name) ? [{ item, place: besideArea(String(item.formula)) }] : [],
      ),
  };
}

/**
 * Puts result columns beside tables of the user's, in the look of these; those of before make way.
 *
 * @throws {BookError} where a sheet is protected, or something stands now where a column should go: nothing is changed then
 */
export const addBeside = (
  context: Excel.RequestContext,
  tables: readonly BesideTable[],
  watched: Watched = {},
): Promise<void> =>
  inWords(
    (work) => work.addColumns,
    async () => {
      const asked = askBeside(context);
      const there = tables.map(({ sheet, area }) => {
        const range = context.workbook.worksheets
          .getItem(sheet)
          .getRange(areaAddress(area))
          .untrack();
        range.load("formulas");
        return range;
      });
      const shut = askProtected(context);
      await context.sync();
      const ours = asked.ours();
      refuseProtected(shut(), [
        ...tables.map(({ sheet }) => sheet),
        ...ours.flatMap(({ place }) => place?.sheet ?? []),
      ]);
      for (const [at, table] of tables.entries())
        refuseFilled(table, there[at]?.formulas ?? [], ours);
      const names = freeBesideNames(
        asked.all().filter((name) => !isBesideName(name)),
        tables.length,
      );
      await inBatches(
        context,
        [
          ...takingOff(context, ours),
          ...tables.map((table, at) => putting(context, table, names[at] ?? "")),
        ],
        watched,
      );
    },
  );

/**
 * Takes the result columns off again, wherever they have moved.
 *
 * @returns for how many tables there were any
 * @throws {BookError} where a sheet that has some is protected: nothing is changed then
 */
export const removeBeside = (
  context: Excel.RequestContext,
  watched: Watched = {},
): Promise<number> =>
  inWords(
    (work) => work.removeColumns,
    async () => {
      const asked = askBeside(context);
      const shut = askProtected(context);
      await context.sync();
      const ours = asked.ours();
      refuseProtected(
        shut(),
        ours.flatMap(({ place }) => place?.sheet ?? []),
      );
      await inBatches(context, takingOff(context, ours), watched);
      return ours.length;
    },
  );

/** Asks which sheets are protected. */
function askProtected({ workbook }: Excel.RequestContext): () => ReadonlySet<string> {
  const { worksheets } = workbook;
  worksheets.load("items/name,items/protection/protected");
  return () =>
    new Set(worksheets.items.flatMap(({ name, protection }) => (protection.protected ? name : [])));
}

function refuseProtected(shut: ReadonlySet<string>, sheets: readonly string[]): void {
  const found = sheets.find((sheet) => shut.has(sheet));
  if (found !== undefined) throw new BookError(({ excel }) => excel.columnsShut(found));
}

/** @throws {BookError} where something other than columns of ours stands in an area */
function refuseFilled(
  { sheet, area }: BesideTable,
  formulas: readonly (readonly unknown[])[],
  ours: readonly Ours[],
): void {
  const isOurs = (row: number, column: number) =>
    ours.some(
      ({ place }) =>
        place?.sheet === sheet &&
        overlap(place.area, { top: row, left: column, bottom: row, right: column }),
    );
  const isFilled = formulas.some((line, row) =>
    line.some((cell, column) => cell !== "" && !isOurs(area.top + row, area.left + column)),
  );
  if (isFilled) throw new BookError(({ excel }) => excel.columnsFilled(areaAddress(area), sheet));
}

const takingOff = ({ workbook }: Excel.RequestContext, ours: readonly Ours[]): Step[] =>
  ours.map(({ item, place }) => ({
    bytes: 3 * OBJECT_BYTES,
    queue: () => {
      if (place)
        workbook.worksheets
          .getItem(place.sheet)
          .getRange(areaAddress(place.area))
          .untrack()
          .clear("All");
      item.delete();
    },
  }));

/** Names the cells first, so that what a failure leaves half done can be taken off. */
function putting(
  { workbook }: Excel.RequestContext,
  { sheet, area, cells, like, across }: BesideTable,
  name: string,
): Step {
  const { top, left, bottom, right } = area;
  const formulas: unknown[][] = Array.from({ length: bottom - top + 1 }, () =>
    Array.from({ length: right - left + 1 }, () => null),
  );
  for (const { row, column, value, formula } of cells) {
    const line = formulas[row - top];
    if (line)
      line[column - left] = formula === undefined ? asInput(value) : enteredFormula(formula);
  }
  return {
    bytes: sentBytes(formulas) + (4 + 3 * like.length) * OBJECT_BYTES,
    queue: () => {
      const on = workbook.worksheets.getItem(sheet);
      const range = on.getRange(areaAddress(area)).untrack();
      workbook.names.add(name, range).visible = false;
      for (const [at, model] of like.entries()) {
        const line = across
          ? { ...area, top: top + at, bottom: top + at }
          : { ...area, left: left + at, right: left + at };
        on.getRange(areaAddress(line))
          .untrack()
          .copyFrom(on.getRange(areaAddress(model)).untrack(), "Formats");
      }
      // Formats of the neighbours that depend on what they hold say nothing here.
      range.conditionalFormats.clearAll();
      range.formulas = formulas;
    },
  };
}
