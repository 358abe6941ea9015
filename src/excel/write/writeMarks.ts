import type { Finding } from "../../check/findings/finding";
import { addressLists, type Mark, marksOn, type Rectangle } from "../../look/markAreas";
import { isMarkRule, MARK_LOOK, markRule } from "../../look/markLook";
import { BookError } from "../../sheets/bookError";
import { excelCode, inWords } from "../read/errorWords";
import { inBatches, OBJECT_BYTES, type Step, sentBytes, type Watched } from "./chunks";

/** What marking came to. */
export interface Marked {
  /** Cells that carry a mark. */
  readonly cells: number;
  /** Conditional formats that were added for them. */
  readonly formats: number;
  /** Conditional formats of ours that were taken off. */
  readonly cleared: number;
}

/**
 * Whether a custom rule is a mark's. One with no formula at all is what a marking leaves that was cut
 * short right after a format was added: it does nothing, and nobody can make it by hand.
 */
const isOurs = (formula: string | null): boolean => !formula || isMarkRule(formula);

/**
 * Marks the cell of each finding, and the row of its table, by conditional formats of ours; marks from
 * before are taken off. Fills and formats of the user's stay as they are.
 *
 * @throws {BookError} where a sheet to be marked is protected: nothing is changed then
 */
export const markFindings = (
  context: Excel.RequestContext,
  findings: readonly Finding[],
  watched: Watched = {},
): Promise<Marked> =>
  inWords(
    (work) => work.mark,
    async () => {
      const ground = await standing(context, watched);
      const sheets = ground.sheets.flatMap((sheet) => {
        const here = findings.filter((finding) => finding.sheet === sheet.name);
        return here.length > 0 ? [{ sheet, marks: marksOn(here, sheet.tables) }] : [];
      });
      refuseProtected([
        ...sheets.map(({ sheet }) => sheet),
        ...ground.sheets.filter(({ ours }) => ours.length > 0),
      ]);
      const added = sheets.flatMap(({ sheet, marks }) =>
        marks.flatMap((mark) => markSteps(sheet.item, mark)),
      );
      await inBatches(context, [...clearing(ground), ...added], watched);
      return {
        cells: sheets.reduce(
          (sum, { marks }) =>
            sum + marks.reduce((cells, mark) => cells + (mark.whole ? 0 : mark.count), 0),
          0,
        ),
        formats: added.length,
        cleared: ground.sheets.reduce((sum, { ours }) => sum + ours.length, 0),
      };
    },
  );

/**
 * Takes every mark of ours off, also after rows were sorted, copied, inserted or deleted.
 *
 * @returns how many conditional formats were taken off
 * @throws {BookError} where a marked sheet is protected: nothing is changed then
 */
export const clearMarks = (context: Excel.RequestContext, watched: Watched = {}): Promise<number> =>
  inWords(
    (work) => work.unmark,
    async () => {
      const ground = await standing(context, watched);
      const marked = ground.sheets.filter(({ ours }) => ours.length > 0);
      refuseProtected(marked);
      await inBatches(context, clearing(ground), watched);
      return marked.reduce((sum, { ours }) => sum + ours.length, 0);
    },
  );

interface MarkedSheet {
  readonly name: string;
  readonly item: Excel.Worksheet;
  readonly protected: boolean;
  readonly tables: readonly Rectangle[];
  /** Ids of the conditional formats of ours that it has. */
  readonly ours: readonly string[];
}

/** Every sheet with its tables' places and the marks that stand on it. */
async function standing(
  context: Excel.RequestContext,
  { signal }: Watched,
): Promise<{ sheets: MarkedSheet[] }> {
  const { worksheets, tables } = context.workbook;
  worksheets.load("items/name,items/protection/protected");
  tables.load("items/worksheet/name");
  await context.sync();

  signal?.throwIfAborted();
  const places = tables.items.map((table) => {
    const range = table.getRange().untrack();
    range.load("rowIndex,columnIndex,rowCount,columnCount");
    return { sheet: table.worksheet.name, range };
  });
  const asked = worksheets.items.map((item) => {
    const formats = formatsOf(item);
    // Types first: to ask every format for a custom rule fails where there are others.
    formats.load("items/type,items/id");
    return { item, formats };
  });
  await context.sync();

  const custom = asked.flatMap(({ item, formats }) =>
    formats.items.flatMap(({ type, id }) => (type === "Custom" ? [{ item, id }] : [])),
  );
  const ours = await ourFormats(context, custom);
  return {
    sheets: asked.map(({ item }) => ({
      name: item.name,
      item,
      protected: item.protection.protected,
      tables: places
        .filter(({ sheet }) => sheet === item.name)
        .map(({ range: { rowIndex, columnIndex, rowCount, columnCount } }) => ({
          top: rowIndex,
          left: columnIndex,
          rows: rowCount,
          columns: columnCount,
        })),
      ours: ours.flatMap((format) => (format.item === item ? [format.id] : [])),
    })),
  };
}

interface FormatAt {
  readonly item: Excel.Worksheet;
  readonly id: string;
}

const formatsOf = (sheet: Excel.Worksheet): Excel.ConditionalFormatCollection =>
  sheet.getRange().untrack().conditionalFormats;

/** Those whose rule is ours. A format made by hand can be listed and yet not be found: it is passed over. */
async function ourFormats(
  context: Excel.RequestContext,
  formats: readonly FormatAt[],
): Promise<FormatAt[]> {
  if (formats.length === 0) return [];
  const rules = formats.map((format) => {
    const { rule } = formatsOf(format.item).getItem(format.id).custom;
    rule.load("formula");
    return { format, rule };
  });
  try {
    await context.sync();
  } catch (error) {
    if (excelCode(error) !== "ItemNotFound") throw error;
    if (formats.length === 1) return [];
    const half = Math.ceil(formats.length / 2);
    return [
      ...(await ourFormats(context, formats.slice(0, half))),
      ...(await ourFormats(context, formats.slice(half))),
    ];
  }
  return rules.flatMap(({ format, rule }) => (isOurs(rule.formula) ? [format] : []));
}

function refuseProtected(sheets: readonly MarkedSheet[]): void {
  const names = [...new Set(sheets.filter((sheet) => sheet.protected).map(({ name }) => name))];
  if (names.length > 0) throw new BookError(({ excel }) => excel.marksShut(names));
}

const clearing = ({ sheets }: { sheets: readonly MarkedSheet[] }): Step[] =>
  sheets.flatMap(({ item, ours }) =>
    ours.map((id) => ({
      bytes: 2 * OBJECT_BYTES,
      queue: () => formatsOf(item).getItem(id).delete(),
    })),
  );

/** The conditional formats of one mark: as many as the length of their addresses asks for. */
function markSteps(sheet: Excel.Worksheet, { weight, whole, areas }: Mark): Step[] {
  const { fill, ink } = MARK_LOOK[weight];
  return addressLists(areas).map((addresses) => ({
    bytes: sentBytes(addresses) + 10 * OBJECT_BYTES,
    queue: () => {
      const { custom } = sheet.getRanges(addresses).untrack().conditionalFormats.add("Custom");
      custom.rule.formula = `=${markRule(weight)}`;
      if (whole)
        for (const edge of ["EdgeTop", "EdgeBottom"] as const) {
          const line = custom.format.borders.getItem(edge);
          line.style = "Continuous";
          line.color = ink;
        }
      else {
        custom.format.fill.color = fill;
        custom.format.font.color = ink;
        custom.format.font.bold = true;
      }
    },
  }));
}
