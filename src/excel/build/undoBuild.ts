import { memoryXml, NAMESPACE } from "../../memory/memory";
import { KINDS } from "../../records/kinds";
import { BookError } from "../../sheets/bookError";
import type { Reconciled, TableChange } from "../../sheets/plan/reconcile";
import { isSameContent } from "../../sheets/plan/sameContent";
import { type Snapshot, type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import { asInput } from "../read/cellValues";
import { inWords } from "../read/errorWords";
import { readExcel } from "../read/readSheets";
import { enteredFormula } from "../read/storedFormula";
import type { Run } from "../write/aim";
import { inBatches, OBJECT_BYTES, type Step, type Watched } from "../write/chunks";
import { heldBy, nameIn, type TableAim, tableRuns } from "../write/tableRuns";
import { type Hits, writeAims } from "../write/writeAims";
import { blankSheet } from "./blankSheet";
import { buildPlan } from "./buildSheets";
import { takeAway } from "./takeAway";

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
      const { most, signal } = watched;
      for (const some of runsBack(built, after))
        refuseMoved(await writeAims(context, some, { signal, most }));
      await inBatches(context, stepsBack(context, built, memory), watched);
      const kept = await takeAway(context, built.done, after, most);
      if (kept.length > 0) throw new BookError(({ excel }) => excel.undoKept([...new Set(kept)]));
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
  { before, blank }: Built,
  memory: Excel.CustomXmlPart | undefined,
): Step[] {
  const { worksheets } = workbook;
  const { lineup, formulas } = before;
  const step = (queue: () => void, bytes = OBJECT_BYTES): Step => ({ bytes, queue });
  return [
    ...(blank === undefined ? [] : [step(() => worksheets.add(blank))]),
    step(() => {
      if (lineup) memory?.setXml(memoryXml({ lineup, ...(formulas ? { formulas } : {}) }));
      else memory?.delete();
    }),
  ];
}

/** What the build wrote over is written back, each cell where it stands by now; keys last, by which the others are found. */
function runsBack({ done }: Built, after: Snapshot): Run<TableAim>[][] {
  const known = new Map(tablesOf(after).map((table) => [table.name, table]));
  const keysOf = ({ name, headers }: TableSnapshot): number[] =>
    KINDS.find(({ table }) => table === name)?.columns.flatMap(({ role, header }) =>
      role === "key" ? headers.indexOf(header) : [],
    ) ?? [];
  const aims = done.change.flatMap((change) => {
    const table = known.get(change.table.name);
    return table ? aimsBack(change, table, keysOf(table)) : [];
  });
  const isKey = ({ table, column }: TableAim) => keysOf(table).includes(column);
  return [aims.filter((aim) => !isKey(aim)), aims.filter(isKey)].map((some) =>
    tableRuns(some, keysOf),
  );
}

const aimsBack = (
  { table: before, writes }: TableChange,
  table: TableSnapshot,
  keys: readonly number[],
): TableAim[] =>
  writes
    .filter(({ row }) => row < before.rowCount)
    .map(({ row, column }): TableAim => {
      const formula = before.formula(row, column);
      const now = heldBy(table, row, column);
      return {
        ...{ table, row, column },
        name: nameIn(
          table,
          { column, width: 1 },
          keys.map((key) => table.cell(row, key)),
        ),
        old: [now.formula === undefined ? now : { formula: now.formula }],
        wanted: [formula === undefined ? before.cell(row, column) : undefined],
        input: [
          formula === undefined ? asInput(before.cell(row, column)) : enteredFormula(formula),
        ],
      };
    });

/** @throws {BookError} where somebody worked on the tables while the build was being taken back */
function refuseMoved({ changed, moved }: Hits<TableAim>): void {
  const names = [...new Set([...changed, ...moved].map(({ table }) => table.sheet))];
  if (names.length > 0) throw new BookError(({ excel }) => excel.undoKept(names));
}
