import { memoryXml, NAMESPACE, REMEMBERED_NAMESPACE, rememberedXml } from "../../memory/memory";
import { isBlank } from "../../records/kind";
import { BookError } from "../../sheets/bookError";
import { isSameStored } from "../../sheets/cells/cell";
import type { Changes } from "../../sheets/plan/changes";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import { asCell } from "../read/cellValues";
import { inWords } from "../read/errorWords";
import { lookSteps } from "../write/applyLook";
import { inBatches, OBJECT_BYTES, type Step, sentBytes, type Watched } from "../write/chunks";
import { contentSteps, entrySteps } from "../write/writeContent";
import { begunSheets } from "./begunSheets";
import { deleteSheet } from "./deleteSheet";
import { sameName } from "./prepareSheets";

/**
 * Writes rows into tables of ours, puts sheets of ours into the workbook, and keeps what it is to
 * remember. Rows alone take one round trip; sheets, memory and what is written over one more, which asks
 * what is there.
 *
 * @throws {BookError} where a sheet of the user's is in the way, or what is to be written over is not
 * what was read: nothing is changed then
 */
export const applyChanges = (
  context: Excel.RequestContext,
  { create = [], renew = [], change = [], remembered, lineup }: Changes,
  watched: Watched = {},
): Promise<void> =>
  inWords(
    (work) => work.change,
    async () => {
      const made = [...create, ...renew];
      const texts = memoryTexts(context, lineup, remembered);
      if (made.length > 0) {
        context.workbook.tables.load("items/name,items/worksheet/name");
        context.workbook.worksheets.load("items/name");
      }
      if (texts.length + made.length > 0 || change.some(writesOver)) {
        const asked = change.map((table) => ask(context, table));
        await context.sync();
        for (const answer of asked) refuseWhatChanged(answer);
      }
      for (const { planned } of create) refuseWhatIsThere(context, planned);
      const begun = await begunSheets(context, made);

      const { tables } = context.workbook;
      const steps = [
        ...made.flatMap((sheet) => newSheetSteps(context, sheet, begun, watched.most)),
        ...change.flatMap((entries) =>
          entrySteps(() => tables.getItem(entries.table.name), entries, watched.most),
        ),
        ...texts.map((text) => memoryStep(context, text)),
      ];
      await inBatches(context, steps, watched);
    },
  );

/** A custom XML part of ours that is to be written, with the parts that are there in its place. */
interface MemoryText {
  readonly xml: string;
  readonly parts: Excel.CustomXmlPartScopedCollection;
}

/** What is to be remembered; asks which parts of ours the workbook has. */
function memoryTexts(
  { workbook }: Excel.RequestContext,
  lineup: Changes["lineup"],
  remembered: Changes["remembered"],
): MemoryText[] {
  const texts = [
    ...(lineup ? [{ namespace: NAMESPACE, xml: memoryXml({ lineup }) }] : []),
    ...(remembered ? [{ namespace: REMEMBERED_NAMESPACE, xml: rememberedXml(remembered) }] : []),
  ];
  return texts.map(({ namespace, xml }) => {
    const parts = workbook.customXmlParts.getByNamespace(namespace);
    parts.load("items/id");
    return { xml, parts };
  });
}

const memoryStep = ({ workbook }: Excel.RequestContext, { xml, parts }: MemoryText): Step => ({
  bytes: sentBytes(xml) + OBJECT_BYTES,
  queue: () => {
    const [part] = parts.items;
    if (part) part.setXml(xml);
    else workbook.customXmlParts.add(xml);
  },
});

const newSheetSteps = (
  context: Excel.RequestContext,
  { planned, writes }: NonNullable<Changes["create"]>[number],
  begun: Begun,
  most: Watched["most"],
): Step[] => {
  const { worksheets } = context.workbook;
  const there = worksheets.items.find(({ name }) => sameName(name, planned.sheet));
  // What was begun is gone on with; with a table on it, it is begun anew.
  const goesOn = there !== undefined && begun.get(there.name)?.hasTable === false;
  return [
    ...(there && !goesOn ? replaced(context, planned, there, begun) : []),
    ...contentSteps(worksheets, planned, writes, goesOn, most),
    ...lookSteps(() => worksheets.getItem(planned.sheet), planned, planned.rows.length),
  ];
};

type Begun = Awaited<ReturnType<typeof begunSheets>>;

/** What stands where rows of a table are to be written over. */
function ask(context: Excel.RequestContext, change: Change) {
  const { table, writes } = change;
  const body = context.workbook.tables.getItem(table.name).getDataBodyRange().untrack();
  body.load("rowCount");
  const rows = writes.flatMap(({ row }) => (row < table.rowCount ? [row] : []));
  const first = rows.reduce((least, row) => Math.min(least, row), table.rowCount);
  const height = rows.reduce((most, row) => Math.max(most, row), first) - first + 1;
  const there = body
    .getCell(first, 0)
    .untrack()
    .getResizedRange(height - 1, table.headers.length - 1)
    .untrack();
  if (rows.length > 0) there.load("values");
  return { change, body, first, there };
}

/** Whether cells are written over that held something. */
const writesOver = ({ table, writes }: Change): boolean =>
  writes.some(({ row, column }) => row < table.rowCount && !isBlank(table.cell(row, column)));

type Change = NonNullable<Changes["change"]>[number];

function refuseWhatChanged({ change, body, first, there }: ReturnType<typeof ask>): void {
  const { table, writes } = change;
  const isAsRead = writes.every(
    ({ row, column }) =>
      row >= table.rowCount ||
      isSameStored(asCell(there.values[row - first]?.[column]), table.cell(row, column)),
  );
  if (body.rowCount !== table.rowCount || !isAsRead)
    throw new BookError(({ excel }) => excel.tableChanged(table.name));
}

function refuseWhatIsThere(
  { workbook }: Excel.RequestContext,
  { table, sheet }: PlannedSheet,
): void {
  if (workbook.tables.items.some(({ name }) => sameName(name, table)))
    throw new BookError(({ excel }) => excel.sheetAdded(sheet));
}

/** Takes a sheet of ours away, or one that was begun, before a new one of its name comes. */
function replaced(
  { workbook }: Excel.RequestContext,
  { table }: PlannedSheet,
  there: Excel.Worksheet,
  begun: Begun,
): Step[] {
  const isOurs = workbook.tables.items.some(
    ({ name, worksheet }) => name === table && worksheet.name === there.name,
  );
  if (!isOurs && !begun.has(there.name))
    throw new BookError(({ excel }) => excel.sheetTaken(there.name, table));
  if (workbook.worksheets.items.length === 1)
    throw new BookError(({ excel }) => excel.onlySheet(there.name));
  return [{ bytes: OBJECT_BYTES, queue: () => deleteSheet(there) }];
}
