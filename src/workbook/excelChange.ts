import type { Changes } from "../sheets/changes";
import type { PlannedSheet } from "../sheets/plannedSheet";
import { BookError } from "./bookError";
import { inBatches, OBJECT_BYTES, type Step, sentBytes, type Watched } from "./excelChunks";
import { changeSteps, contentSteps } from "./excelContent";
import { sameName } from "./excelGround";
import { lookSteps } from "./excelLook";
import { inWords } from "./excelWords";
import { memoryXml, NAMESPACE, REMEMBERED_NAMESPACE, rememberedXml } from "./memory";

/**
 * Writes rows into tables of ours, puts sheets of ours into the workbook, and keeps what it is to
 * remember. Rows alone take one round trip; sheets and memory one more, which asks what is there.
 *
 * @throws {BookError} where a sheet of the user's is in the way: nothing is changed then
 */
export const applyChanges = (
  context: Excel.RequestContext,
  { create = [], change = [], remembered, lineup }: Changes,
  watched: Watched = {},
): Promise<void> =>
  inWords("Writing into the workbook", async () => {
    const { workbook } = context;
    const { most } = watched;
    const texts = [
      ...(lineup ? [{ namespace: NAMESPACE, xml: memoryXml({ lineup }) }] : []),
      ...(remembered ? [{ namespace: REMEMBERED_NAMESPACE, xml: rememberedXml(remembered) }] : []),
    ].map((text) => ({ ...text, parts: workbook.customXmlParts.getByNamespace(text.namespace) }));
    for (const { parts } of texts) parts.load("items/id");
    if (create.length > 0) workbook.tables.load("items/name,items/worksheet/name");
    if (create.length > 0) workbook.worksheets.load("items/name");
    if (texts.length + create.length > 0) await context.sync();

    const steps = [
      ...create.flatMap(({ planned, writes }): Step[] => [
        ...replaced(context, planned),
        ...contentSteps(workbook.worksheets, planned, writes, false, most),
        ...lookSteps(
          () => workbook.worksheets.getItem(planned.sheet),
          planned,
          planned.rows.length,
        ),
      ]),
      ...change.flatMap((one) =>
        changeSteps(() => workbook.tables.getItem(one.table.name), { ...one, aside: [] }, most),
      ),
      ...texts.map(
        ({ xml, parts }): Step => ({
          bytes: sentBytes(xml) + OBJECT_BYTES,
          queue: () => {
            const [part] = parts.items;
            if (part) part.setXml(xml);
            else workbook.customXmlParts.add(xml);
          },
        }),
      ),
    ];
    await inBatches(context, steps, watched);
  });

/** Takes a sheet of ours away before a new one of its name comes. */
function replaced({ workbook }: Excel.RequestContext, { sheet, table }: PlannedSheet): Step[] {
  const there = workbook.worksheets.items.find(({ name }) => sameName(name, sheet));
  if (!there) return [];
  const isOurs = workbook.tables.items.some(
    ({ name, worksheet }) => name === table && worksheet.name === there.name,
  );
  if (!isOurs)
    throw new BookError(
      `The workbook has a sheet "${there.name}" of its own, where the table ${table} should go; rename that sheet and try again. Nothing was changed.`,
    );
  return [{ bytes: OBJECT_BYTES, queue: () => there.delete() }];
}
