import {
  NAMESPACE,
  REMEMBERED_NAMESPACE,
  readMemoryXml,
  readRememberedXml,
} from "../../memory/memory";
import type { Snapshot } from "../../sheets/snapshot";
import { askBeside } from "../write/besideTables";
import { BATCH_BYTES, type Watched } from "../write/chunks";
import { type Block, outlineSheets, outlineTables, type TableBlock } from "../write/outlineBlocks";
import { inWords } from "./errorWords";
import { besides } from "./readBeside";
import { BOTH, bytesOf, readRows } from "./readRows";
import { sheetCells, tableSnapshot, withFormulasOfFirst } from "./snapshotOf";

/** Of which sheets all cells are read: those that the workbook's maps name, all that have no table, or every one. */
export type ReadSheets = "mapped" | "plain" | "every";

export interface ReadOptions extends Watched {
  readonly sheets?: ReadSheets;
  /**
   * Given where a first look is wanted before all is read: told once the values are there of a workbook that
   * takes more than one answer, with the formulas of each table's first row in place of all others.
   */
  readonly valuesRead?: (snapshot: Snapshot) => Promise<void>;
}

/**
 * What the open workbook holds: its tables, our memory, and the sheets in somebody's own layout that are
 * mapped. Two round trips, however many tables there are, two or three more for sheets without tables,
 * then as many as their content needs at up to 4 MB each. Where
 * somebody waits for a first look, values come before formulas, which are most of what is sent.
 *
 * @param context a request context of Excel, as `Excel.run` gives it
 * @throws {BookError} with what stands in the way, and when the workbook changes while it is read
 */
export const readExcel = (
  context: Excel.RequestContext,
  { sheets: wanted = "mapped", valuesRead, ...watched }: ReadOptions = {},
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
      const all = [...blocks, ...used.values()];

      /** @param seen the tables as far as they are read */
      const snapshotOf = (seen: readonly TableBlock[]): Snapshot => ({
        sheets: sheets.items.map((sheet) => {
          const { id, name, visibility } = sheet;
          const cells = used.get(name);
          const ours = columns.flatMap((place) => (place.sheet === name ? place.area : []));
          return {
            id,
            name,
            ...(visibility === "Visible" ? {} : { hidden: true }),
            tables: seen.filter(({ sheet }) => sheet === name).map(tableSnapshot),
            ...(cells ? { cells: sheetCells(cells, beside?.get(sheet)) } : {}),
            ...(ours.length > 0 ? { beside: ours } : {}),
          };
        }),
        ...(isManual ? { isManual } : {}),
        ...firstOf(memories, readMemoryXml),
        ...known,
      });
      // Cells in a layout of somebody's own have no first row to go by: with such, all is read at once.
      const isEarly = valuesRead !== undefined && used.size === 0;
      if (isEarly && bytesOf(all) > (watched.most ?? BATCH_BYTES)) {
        await readRows(context, all, inHalf(watched, 0), ["values"]);
        await valuesRead(snapshotOf(blocks.map(withFormulasOfFirst)));
        await readRows(context, all, inHalf(watched, 1), ["formulas"]);
      } else await readRows(context, all, watched, BOTH);
      return snapshotOf(blocks);
    },
  );

/** The progress of one of two readings of all rows, as part of both. */
const inHalf = ({ progress, ...watched }: Watched, before: 0 | 1): Watched => ({
  ...watched,
  ...(progress ? { progress: (done, total) => progress(before * total + done, 2 * total) } : {}),
});

const firstOf = <T>(
  xml: readonly OfficeExtension.ClientResult<string>[],
  read: (xml: string) => T | undefined,
): T | undefined => xml.map(({ value }) => read(value)).find((one) => one !== undefined);
