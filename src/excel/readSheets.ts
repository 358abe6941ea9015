import {
  NAMESPACE,
  REMEMBERED_NAMESPACE,
  readMemoryXml,
  readRememberedXml,
} from "../memory/memory";
import type { Snapshot } from "../sheets/snapshot";
import { askBeside } from "./besideTables";
import type { Watched } from "./chunks";
import { inWords } from "./errorWords";
import { type Block, outlineSheets, outlineTables } from "./outlineBlocks";
import { besides } from "./readBeside";
import { readRows } from "./readRows";
import { sheetCells, tableSnapshot } from "./snapshotOf";

/** Of which sheets all cells are read: those that the workbook's maps name, all that have no table, or every one. */
export type ReadSheets = "mapped" | "plain" | "every";

export interface ReadOptions extends Watched {
  readonly sheets?: ReadSheets;
}

/**
 * What the open workbook holds: its tables, our memory, and the sheets in somebody's own layout that are
 * mapped. Two round trips, however many tables there are, two or three more for sheets without tables,
 * then as many as their content needs at up to 4 MB each.
 *
 * @param context a request context of Excel, as `Excel.run` gives it
 * @throws {BookError} with what stands in the way, and when the workbook changes while it is read
 */
export const readExcel = (
  context: Excel.RequestContext,
  { sheets: wanted = "mapped", ...watched }: ReadOptions = {},
): Promise<Snapshot> =>
  inWords(
    (work) => work.read,
    async () => {
      const { workbook } = context;
      const tables = workbook.tables;
      tables.load("items/name,items/worksheet/name");
      const sheets = workbook.worksheets;
      sheets.load("items/id,items/name,items/visibility");
      const ours = [NAMESPACE, REMEMBERED_NAMESPACE].map((namespace) => {
        const parts = workbook.customXmlParts.getByNamespace(namespace);
        parts.load("items/id");
        return parts;
      });
      const asked = wanted === "every" ? askBeside(context) : undefined;
      const { application } = workbook;
      application.load("calculationMode");
      await context.sync();

      watched.signal?.throwIfAborted();
      // What is read is worked out first, where Excel does not do it by itself.
      const isManual = application.calculationMode === "Manual";
      if (isManual) application.calculate("Recalculate");
      const columns = asked?.ours().flatMap(({ place }) => place ?? []) ?? [];
      const [memories = [], remembered = []] = ours.map(({ items }) =>
        items.map((part) => part.getXml()),
      );
      const blocks = await outlineTables(context, tables.items);
      const known = firstOf(remembered, readRememberedXml);
      const isWanted: Readonly<Record<ReadSheets, (name: string) => boolean>> = {
        mapped: (name) => known?.maps.some(({ sheet }) => sheet === name) ?? false,
        plain: (name) => blocks.every(({ sheet }) => sheet !== name),
        every: () => true,
      };
      const plain = sheets.items.filter(({ name }) => isWanted[wanted](name));
      const used = new Map(
        plain.length > 0 ? await outlineSheets(context, plain) : ([] as [string, Block][]),
      );
      const beside = plain.length > 0 ? await besides(context, plain) : undefined;
      await readRows(context, [...blocks, ...used.values()], watched);

      return {
        sheets: sheets.items.map((sheet) => {
          const { id, name, visibility } = sheet;
          const cells = used.get(name);
          const ours = columns.flatMap((place) => (place.sheet === name ? place.area : []));
          return {
            id,
            name,
            ...(visibility === "Visible" ? {} : { hidden: true }),
            tables: blocks.filter(({ sheet }) => sheet === name).map(tableSnapshot),
            ...(cells ? { cells: sheetCells(cells, beside?.get(sheet)) } : {}),
            ...(ours.length > 0 ? { beside: ours } : {}),
          };
        }),
        ...(isManual ? { isManual } : {}),
        ...firstOf(memories, readMemoryXml),
        ...known,
      };
    },
  );

const firstOf = <T>(
  xml: readonly OfficeExtension.ClientResult<string>[],
  read: (xml: string) => T | undefined,
): T | undefined => xml.map(({ value }) => read(value)).find((one) => one !== undefined);
