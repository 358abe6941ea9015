import { HEADER_ROW } from "../look/tableLayout";
import { memoryXml } from "../memory/memory";
import { INSTRUMENT_SHEET } from "../sheets/ours/instrumentSheet";
import type { Plan } from "../sheets/plan";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { instrumentSheetIn, type Reconciled, reconcile } from "../sheets/reconcile";
import type { Snapshot, TableSnapshot } from "../sheets/snapshot";
import { lookSteps, resultSteps } from "./applyLook";
import { validationSteps } from "./applyValidations";
import { inBatches, OBJECT_BYTES, type Step, sentBytes, type Watched } from "./chunks";
import { inWords } from "./errorWords";
import {
  buildingXml,
  type Ground,
  groundOf,
  refuseWhatIsInTheWay,
  sameName,
} from "./prepareSheets";
import { readExcel } from "./readSheets";
import { changeSteps, contentSteps } from "./writeContent";

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
  plan: Plan,
  watched: Watched = {},
): Promise<{ done: Reconciled; before: Snapshot }> =>
  inWords("Building the records", async () => {
    const ground = await groundOf(context, plan);
    const { signal, most } = watched;
    const before = await readExcel(context, { signal, most });
    const done = withoutResults(reconcile(plan, before, ground.unfinished));
    refuseWhatIsInTheWay(done, ground);
    await inBatches(context, stepsOf(context, plan, before, done, ground, most), watched);
    return { done, before };
  });

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
): Step[] {
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
      changeSteps(() => workbook.tables.getItem(one.table.name), one, most),
    ),
    ...laid.flatMap(({ planned, rows, sheet }) => [
      ...lookSteps(sheet, planned, rows),
      ...validationSteps(sheet, planned, rows, instruments),
      ...resultSteps(sheet, planned, rows),
    ]),
  ];
  const xml = memoryXml({ lineup: plan.lineup });
  const known = snapshot.lineup && memoryXml({ lineup: snapshot.lineup }) === xml;
  if (content.length === 0 && known && !ground.marker) return [];

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
  return laid.length > 0 ? [begin, ...content, end] : [...content, end];
}

const standsAsBuilt = ({ top, left, headers }: TableSnapshot, { columns }: PlannedSheet) =>
  top === HEADER_ROW && left === 0 && columns.every(({ header }, at) => header === headers[at]);
