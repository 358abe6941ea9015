import { HEADER_ROW } from "../../look/tableLayout";
import { builtNow, memoryXml } from "../../memory/memory";
import { BookError } from "../../sheets/bookError";
import { INSTRUMENT_SHEET } from "../../sheets/ours/instrumentSheet";
import type { Plan } from "../../sheets/plan/plan";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import { planOnto } from "../../sheets/plan/planOnto";
import {
  belongs,
  instrumentSheetIn,
  type Reconciled,
  reconcile,
} from "../../sheets/plan/reconcile";
import type { Snapshot, TableSnapshot } from "../../sheets/snapshot";
import { inWords } from "../read/errorWords";
import { readExcel } from "../read/readSheets";
import type { Run } from "../write/aim";
import { lookSteps, resultSteps } from "../write/applyLook";
import { validationSteps } from "../write/applyValidations";
import { inBatches, OBJECT_BYTES, type Step, sentBytes, type Watched } from "../write/chunks";
import { type TableAim, tableRuns } from "../write/tableRuns";
import { type Hits, writeAims } from "../write/writeAims";
import { addedSteps, changeAims, contentSteps } from "../write/writeContent";
import {
  buildingXml,
  type Ground,
  groundOf,
  refuseWhatIsInTheWay,
  sameName,
} from "./prepareSheets";

/**
 * Builds the record workbook of a plan onto the open workbook: sheets and rows that it lacks are added,
 * limits, givens and formulas are brought up to date; entries, and everything of the user's, stay.
 * A build that was cut short is taken up where it stopped when it is run again.
 *
 * @throws {BookError} where a protected sheet or a sheet of the user's is in the way: nothing is changed
 * then; or with what stopped the build
 */
export const applyPlan = async (
  context: Excel.RequestContext,
  plan: Plan,
  watched: Watched = {},
): Promise<Reconciled> => (await buildPlan(context, plan, watched)).done;

/** The same, and what the workbook held before. */
export const buildPlan = (
  context: Excel.RequestContext,
  wanted: Plan,
  watched: Watched = {},
): Promise<{ done: Reconciled; before: Snapshot }> =>
  inWords(
    (work) => work.build,
    async () => {
      const ground = await groundOf(context, wanted);
      const { signal, most } = watched;
      const before = await readExcel(context, { signal, most });
      const plan = planOnto(wanted, before);
      const done = withoutResults(reconcile(plan, before, ground.unfinished));
      refuseWhatIsInTheWay(done, ground);
      const { first, last } = stepsOf(context, plan, before, done, ground, most);
      const runs = changeRuns(plan, done);
      // Where nothing stands that is written over, all goes in one.
      await inBatches(context, runs.length > 0 ? first : [...first, ...last], watched);
      if (runs.length > 0) {
        // Keys last: the other cells are found by those that stand there.
        for (const some of [runs.filter(({ isKey }) => !isKey), runs.filter(({ isKey }) => isKey)])
          refuseMoved(await writeAims(context, some, { signal, most }));
        await inBatches(context, last, { signal, most });
      }
      return { done, before };
    },
  );

/** What is written over in tables that the workbook has already. */
function changeRuns(
  plan: Plan,
  { change }: Reconciled,
): (Run<TableAim> & { readonly isKey: boolean })[] {
  const keys = new Map(
    change.map(({ table }) => [
      table,
      plan.sheets
        .find((planned) => belongs(planned, table))
        ?.columns.flatMap(({ role, header }) =>
          role === "key" ? table.headers.indexOf(header) : [],
        ) ?? [],
    ]),
  );
  const aims = change.flatMap((one) => changeAims(one, keys.get(one.table) ?? []));
  return tableRuns(aims, (table) => keys.get(table) ?? []).map((run) => ({
    ...run,
    isKey: run.aims.some(({ table, column }) => keys.get(table)?.includes(column)),
  }));
}

/** @throws {BookError} where somebody worked on the tables while they were being built */
function refuseMoved({ changed, moved }: Hits<TableAim>): void {
  const names = [...new Set([...changed, ...moved].map(({ table }) => table.sheet))];
  if (names.length > 0) throw new BookError(({ excel }) => excel.changedMeanwhile(names));
}

/** Excel works out its formulas itself: a cell that has the right one is not written for its value's sake. */
const withoutResults = ({ create, change }: Reconciled): Reconciled => ({
  create,
  change: change.map((one) => ({
    ...one,
    writes: one.writes.filter(
      ({ row, column, formula }) =>
        formula === undefined ||
        row >= one.table.rowCount ||
        one.table.formula(row, column) !== formula,
    ),
  })),
});

function stepsOf(
  context: Excel.RequestContext,
  plan: Plan,
  snapshot: Snapshot,
  { create, change }: Reconciled,
  ground: Ground,
  most: number | undefined,
): { readonly first: Step[]; readonly last: Step[] } {
  const { workbook } = context;
  const { worksheets, customXmlParts } = workbook;
  const sheetOf = (name: string) => () => worksheets.getItem(name);
  const instruments = instrumentSheetIn({ create, change }) ?? INSTRUMENT_SHEET;

  const fresh = create.map(({ planned }) => ({
    planned,
    rows: planned.rows.length,
    sheet: sheetOf(planned.sheet),
  }));
  const resumed = change.flatMap(({ table, added }) => {
    const planned = plan.sheets.find((one) => one.table === table.name);
    return planned && ground.unfinished.has(table.sheet) && standsAsBuilt(table, planned)
      ? [
          {
            planned: { ...planned, sheet: table.sheet },
            rows: table.rowCount + added,
            sheet: sheetOf(table.sheet),
          },
        ]
      : [];
  });
  const laid = [...fresh, ...resumed];

  const content = [
    ...create.flatMap(({ planned, writes }) =>
      contentSteps(
        worksheets,
        planned,
        writes,
        ground.sheets.some(({ name }) => sameName(name, planned.sheet)),
        most,
      ),
    ),
    ...change.flatMap((one) =>
      addedSteps(() => workbook.tables.getItem(one.table.name), one, most),
    ),
  ];
  const look = laid.flatMap(({ planned, rows, sheet }) => [
    ...lookSteps(sheet, planned, rows),
    ...validationSteps(sheet, planned, rows, instruments),
    ...resultSteps(sheet, planned, rows),
  ]);
  const isChanged = change.some(({ writes }) => writes.length > 0);
  const xml = memoryXml(builtNow(plan.lineup));
  const known = isRemembered(snapshot, xml);
  if (content.length + look.length === 0 && !isChanged && known && !ground.marker)
    return { first: [], last: [] };

  const building = buildingXml(laid.map(({ planned }) => planned.sheet));
  let marker = ground.marker;
  const begin: Step = {
    bytes: sentBytes(building) + OBJECT_BYTES,
    queue: () => {
      if (marker) marker.setXml(building);
      else marker = customXmlParts.add(building);
    },
  };
  const end: Step = {
    bytes: sentBytes(xml) + OBJECT_BYTES,
    queue: () => {
      if (!known && ground.memory) ground.memory.setXml(xml);
      else if (!known) customXmlParts.add(xml);
      marker?.delete();
    },
  };
  return { first: laid.length > 0 ? [begin, ...content] : content, last: [...look, end] };
}

const isRemembered = ({ lineup, formulas }: Snapshot, xml: string): boolean =>
  lineup !== undefined && memoryXml({ lineup, ...(formulas ? { formulas } : {}) }) === xml;

const standsAsBuilt = ({ top, left, headers }: TableSnapshot, { columns }: PlannedSheet) =>
  top === HEADER_ROW && left === 0 && columns.every(({ header }, at) => header === headers[at]);
