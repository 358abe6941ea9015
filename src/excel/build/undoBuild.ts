import { memoryXml, NAMESPACE } from "../../memory/memory";
import { BookError } from "../../sheets/bookError";
import type { Reconciled, TableChange } from "../../sheets/plan/reconcile";
import { isSameContent } from "../../sheets/plan/sameContent";
import type { Snapshot } from "../../sheets/snapshot";
import { asInput } from "../read/cellValues";
import { inWords } from "../read/errorWords";
import { readExcel } from "../read/readSheets";
import { enteredFormula } from "../read/storedFormula";
import { inBatches, OBJECT_BYTES, type Step, type Watched } from "../write/chunks";
import { blankSheet } from "./blankSheet";
import { buildPlan } from "./buildSheets";

/** What a build did, and what the workbook held before it. */
export interface Built {
  readonly done: Reconciled;
  readonly before: Snapshot;
  /** The blank sheet of a new workbook, which the build took away. */
  readonly blank?: string;
}

/**
 * Builds a plan onto the open workbook as `applyPlan` does, and takes the blank sheet of a new workbook
 * away once there are others.
 *
 * @throws {BookError} as `applyPlan`
 */
export async function buildOnto(
  context: Excel.RequestContext,
  plan: Parameters<typeof buildPlan>[1],
  watched: Watched = {},
): Promise<Built> {
  const { done, before } = await buildPlan(context, plan, watched);
  if (done.create.length === 0) return { done, before };
  return inWords(
    (work) => work.blankSheet,
    async () => {
      const blank = await blankSheet(context, before);
      if (blank === undefined) return { done, before };
      context.workbook.worksheets.getItem(blank).delete();
      await context.sync();
      return { done, before, blank };
    },
  );
}

/**
 * Takes a build back: sheets and rows that it added go, cells that it wrote hold what they held.
 *
 * @param after the workbook as it was read after the build
 * @throws {BookError} where the workbook was changed since, or is protected: nothing is changed then
 */
export const undoBuild = (
  context: Excel.RequestContext,
  built: Built,
  after: Snapshot,
  watched: Watched = {},
): Promise<void> =>
  inWords(
    (work) => work.undo,
    async () => {
      if (!isSameContent(after, await readExcel(context, watched)))
        throw new BookError(({ excel }) => excel.undoChanged);
      const memory = await groundToUndo(context, built);
      await inBatches(context, stepsBack(context, built, memory), watched);
    },
  );

/** Asks what stands in the way, and where our memory is: one round trip. */
async function groundToUndo({ workbook }: Excel.RequestContext, { done }: Built) {
  const { worksheets, protection, customXmlParts } = workbook;
  worksheets.load("items/name,items/protection/protected");
  protection.load("protected");
  const memory = customXmlParts.getByNamespace(NAMESPACE);
  memory.load("items/id");
  await worksheets.context.sync();
  const touched = new Set(done.change.map(({ table }) => table.sheet));
  const shut = worksheets.items.find(
    ({ name, protection }) => protection.protected && touched.has(name),
  );
  if (protection.protected || shut) throw new BookError(({ excel }) => excel.undoShut(shut?.name));
  return memory.items[0];
}

function stepsBack(
  { workbook }: Excel.RequestContext,
  { done, before, blank }: Built,
  memory: Excel.CustomXmlPart | undefined,
): Step[] {
  const { worksheets, tables } = workbook;
  const { lineup, formulas } = before;
  const step = (queue: () => void, bytes = OBJECT_BYTES): Step => ({ bytes, queue });
  return [
    ...(blank === undefined ? [] : [step(() => worksheets.add(blank))]),
    ...done.create.map(({ planned }) => step(() => worksheets.getItem(planned.sheet).delete())),
    ...done.change.flatMap((change) => [
      ...rowsBack(tables, change).map((queue) => step(queue)),
      ...cellsBack(tables, change).map((queue) => step(queue, 2 * OBJECT_BYTES)),
    ]),
    step(() => {
      if (lineup) memory?.setXml(memoryXml({ lineup, ...(formulas ? { formulas } : {}) }));
      else memory?.delete();
    }),
  ];
}

const rowsBack = (tables: Excel.TableCollection, { table, added }: TableChange): (() => void)[] =>
  added === 0
    ? []
    : [
        () =>
          tables
            .getItem(table.name)
            .getDataBodyRange()
            .untrack()
            .getCell(table.rowCount, 0)
            .untrack()
            .getResizedRange(added - 1, table.headers.length - 1)
            .untrack()
            .delete("Up"),
      ];

const cellsBack = (tables: Excel.TableCollection, { table, writes }: TableChange) =>
  writes
    .filter(({ row }) => row < table.rowCount)
    .map(({ row, column }) => () => {
      const formula = table.formula(row, column);
      const cell = tables.getItem(table.name).getDataBodyRange().untrack().getCell(row, column);
      cell.untrack().formulas = [
        [formula === undefined ? asInput(table.cell(row, column)) : enteredFormula(formula)],
      ];
    });
