import { escaped, NAMESPACE, unescaped } from "../../memory/memory";
import { BookError } from "../../sheets/bookError";
import { mayBeNamed } from "../../sheets/plan/freeSheetName";
import type { Plan } from "../../sheets/plan/plan";
import type { PlannedSheet } from "../../sheets/plan/plannedSheet";
import type { Reconciled } from "../../sheets/plan/reconcile";

/** Namespace of the part that says which sheets are being laid out; it goes when they are finished. */
const BUILDING = "urn:gearproof:building:1";

/** What the workbook is like, beyond its tables, before anything is written. */
export interface Ground {
  readonly sheets: readonly { readonly name: string; readonly protected: boolean }[];
  readonly structureProtected: boolean;
  readonly memory?: Excel.CustomXmlPart;
  readonly marker?: Excel.CustomXmlPart;
  /** Sheets that a build before this one began and did not finish. */
  readonly unfinished: ReadonlySet<string>;
}

/** Asks what the workbook is like: one round trip, and one more where a build was cut short. */
export async function groundOf(context: Excel.RequestContext, plan: Plan): Promise<Ground> {
  const { worksheets, protection, customXmlParts } = context.workbook;
  worksheets.load("items/name,items/protection/protected");
  protection.load("protected");
  const ours = [NAMESPACE, BUILDING].map((namespace) => {
    const parts = customXmlParts.getByNamespace(namespace);
    parts.load("items/id");
    return parts;
  });
  await context.sync();
  const [memory, marker] = ours.map(({ items }) => items[0]);
  const sheets = worksheets.items.map(({ name, protection }) => ({
    name,
    protected: protection.protected,
  }));
  const known = plan.sheets.flatMap((planned) =>
    sheets
      .filter(({ name }) => mayBeNamed(planned.sheet, name))
      .map(({ name }) => ({ ...planned, sheet: name })),
  );
  return {
    sheets,
    structureProtected: protection.protected,
    memory,
    marker,
    unfinished: marker ? await unfinishedSheets(context, known, marker) : new Set(),
  };
}

/**
 * The sheets that a cut-short build named and that still are as it left them. A table that had been made
 * and not yet named gets its name.
 */
async function unfinishedSheets(
  context: Excel.RequestContext,
  sheets: readonly PlannedSheet[],
  marker: Excel.CustomXmlPart,
): Promise<Set<string>> {
  const xml = marker.getXml();
  const asked = sheets.map((planned) => {
    const sheet = context.workbook.worksheets.getItem(planned.sheet);
    const title = sheet.getRange("A1").untrack();
    title.load("values");
    const { tables } = sheet;
    tables.load("items/name");
    return { planned, title, tables };
  });
  await context.sync();
  const named = new Set(/>([\s\S]*)<\/building>/.exec(xml.value)?.[1]?.split("\n").map(unescaped));
  const begun = asked.filter(
    ({ planned, title }) =>
      named.has(planned.sheet) && ["", planned.title].includes(String(title.values[0]?.[0])),
  );
  const nameless = begun.flatMap(({ planned, tables: { items } }) => {
    const [table] = items;
    return table && items.length === 1 && table.name !== planned.table ? [{ planned, table }] : [];
  });
  // It goes with the first batch of what is read next, before the names are asked for.
  for (const { planned, table } of nameless) table.name = planned.table;
  return new Set(begun.map(({ planned }) => planned.sheet));
}

/** The part that names the sheets that are being laid out. */
export const buildingXml = (sheets: readonly string[]): string =>
  `<building xmlns="${BUILDING}">${sheets.map(escaped).join("\n")}</building>`;

export const sameName = (one: string, other: string) => one.toLowerCase() === other.toLowerCase();

/** @throws {BookError} where a protection is in the way of what is to be done */
export function refuseWhatIsInTheWay({ create, change }: Reconciled, ground: Ground): void {
  if (ground.structureProtected && create.length > 0)
    throw new BookError(({ excel }) => excel.structureShut);
  const touched = new Set([
    ...change.filter(({ writes }) => writes.length > 0).map(({ table }) => table.sheet),
    ...ground.unfinished,
  ]);
  const shut = ground.sheets.filter((sheet) => sheet.protected && touched.has(sheet.name));
  if (shut.length > 0)
    throw new BookError(({ excel }) => excel.buildShut(shut.map(({ name }) => name)));
}
