import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import {
  escaped,
  type Memory,
  memoryXml,
  NAMESPACE,
  REMEMBERED_NAMESPACE,
  rememberedXml,
  unescaped,
} from "../memory/memory";
import type { Remembered } from "../sheets/remembered";
import { keepPivotCaches } from "./pivotCaches";
import { withPrintNames } from "./printNames";
import { type Laid, rowHeights } from "./rowHeights";

const PART = /^customXml\/item(\d+)\.xml$/;

const RELATIONSHIP =
  "http://schemas.openxmlformats.org/officeDocument/2006/relationships/customXml";

/**
 * The last touch on a workbook file that the file library wrote:
 * - cached results stay: it asks for a full recalculation on opening, which without the add-in would
 *   turn every worksheet function of ours into `#NAME?`; and LibreOffice keeps cached results only of
 *   files whose application it knows;
 * - print areas and titles name their sheet as Excel reads it;
 * - rows whose text needs more than a line get a height that a spreadsheet may change: the library knows
 *   only heights that a person set, and a row without any is shown one line high by programs that take
 *   heights as they are;
 * - pivot tables find their caches by the numbers that they know;
 * - our custom XML part stands in the package and is related to the workbook;
 * - tables carry the formulas of their computed columns, so that a row added in a spreadsheet gets them.
 *
 * @param sheets as the library wrote them, in their order
 * @param columnFormulas by table name, then header
 * @param remembered what shall be remembered of readings; what is there stays where not given
 */
export function finish(
  file: Uint8Array,
  sheets: readonly Laid[],
  memory: Memory | undefined,
  columnFormulas: ReadonlyMap<string, ReadonlyMap<string, string>>,
  remembered?: Remembered,
): Uint8Array {
  const parts = unzipSync(file);
  const edit = (name: string, change: (text: string) => string) => {
    const bytes = parts[name];
    if (bytes) parts[name] = strToU8(change(strFromU8(bytes)));
  };
  edit("xl/workbook.xml", (text) =>
    withPrintNames(text).replace(/<calcPr [^>]*\/>/, '<calcPr calcId="191029"/>'),
  );
  edit("docProps/app.xml", (text) =>
    text.replace(/<Application>[^<]*</, "<Application>Microsoft Excel<"),
  );
  for (const name of Object.keys(parts))
    if (/^xl\/tables\/table\d+\.xml$/.test(name))
      edit(name, (text) => withColumnFormulas(text, columnFormulas));
  keepPivotCaches(parts);
  sheets.map(rowHeights).forEach((heights, at) => {
    if (heights.size > 0)
      edit(`xl/worksheets/sheet${at + 1}.xml`, (text) => withHeights(text, heights));
  });
  if (memory) remember(parts, edit, NAMESPACE, "rIdGearproof", memoryXml(memory));
  if (remembered)
    remember(
      parts,
      edit,
      REMEMBERED_NAMESPACE,
      "rIdGearproofRemembered",
      rememberedXml(remembered),
    );
  return zipSync(parts, { level: 6, mtime: new Date("2026-01-01T00:00:00Z") });
}

const withHeights = (xml: string, heights: ReadonlyMap<number, number>): string =>
  xml.replace(/<row r="(\d+)"(?![^>]*\bht=)/g, (row, number) => {
    const height = heights.get(Number(number) - 1);
    return height === undefined ? row : `${row} ht="${height}"`;
  });

function withColumnFormulas(
  xml: string,
  formulas: ReadonlyMap<string, ReadonlyMap<string, string>>,
): string {
  const table = /<table [^>]*\bname="([^"]*)"/.exec(xml)?.[1];
  const columns = table === undefined ? undefined : formulas.get(unescaped(table));
  if (!columns) return xml;
  return xml.replace(
    /<tableColumn ([^>]*)\bname="([^"]*)"([^>]*)\/>/g,
    (whole, before, name, after) => {
      const formula = columns.get(unescaped(name));
      return formula === undefined
        ? whole
        : `<tableColumn ${before}name="${name}"${after}><calculatedColumnFormula>${escaped(formula)}</calculatedColumnFormula></tableColumn>`;
    },
  );
}

function remember(
  parts: Record<string, Uint8Array>,
  edit: (name: string, change: (text: string) => string) => void,
  namespace: string,
  relationship: string,
  xml: string,
) {
  const items = Object.keys(parts).flatMap((name) => PART.exec(name)?.[1] ?? []);
  const ours = items.find((number) =>
    strFromU8(parts[`customXml/item${number}.xml`] ?? new Uint8Array()).includes(namespace),
  );
  const number = ours ?? String(Math.max(0, ...items.map(Number)) + 1);
  parts[`customXml/item${number}.xml`] = strToU8(xml);
  const target = `../customXml/item${number}.xml`;
  edit("xl/_rels/workbook.xml.rels", (text) =>
    text.includes(target)
      ? text
      : text.replace(
          "</Relationships>",
          `<Relationship Id="${relationship}" Type="${RELATIONSHIP}" Target="${target}"/></Relationships>`,
        ),
  );
  edit("[Content_Types].xml", (text) =>
    /Extension="xml"/.test(text)
      ? text
      : text.replace(/<Types [^>]*>/, '$&<Default Extension="xml" ContentType="application/xml"/>'),
  );
}
