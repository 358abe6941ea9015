import { strFromU8, strToU8, type Unzipped, unzipSync, zipSync } from "fflate";
import { planFor } from "../../src/sheets/plan/plan";
import { writeBook } from "../../src/xlsx/file";
import { longLineup } from "./lineups";

const MAIN = "http://schemas.openxmlformats.org/spreadsheetml/2006/main";
const OFFICE = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
const PACKAGE = "http://schemas.openxmlformats.org/package/2006/relationships";

type Text = string | Uint8Array;

/** What an attacking workbook says, beside a sheet "Own" with a small table of contact resistances (invented). */
export interface Attack {
  /** In place of the rows of the sheet. */
  readonly rows?: Text;
  /** Behind its cells. */
  readonly inSheet?: string;
  /** Behind the list of sheets. */
  readonly inBook?: string;
  readonly sharedStrings?: Text;
  /** The parts of tables of the sheet. */
  readonly tables?: readonly string[];
  readonly comments?: Text;
  readonly customXml?: Text;
  /** How the text of each part is put into bytes. */
  readonly encode?: (text: string) => Uint8Array;
}

const PANELS = ["H01", "H02", "H03", "H04"];
export const cell = (at: string, text: string): string =>
  `<c r="${at}" t="inlineStr"><is><t>${text}</t></is></c>`;
const OWN_ROWS = [
  `<row r="1">${cell("A1", "Panel")}${cell("B1", "Pole")}${cell("C1", "Contact resistance (µΩ)")}</row>`,
  ...PANELS.map(
    (panel, at) =>
      `<row r="${at + 2}">${cell(`A${at + 2}`, panel)}${cell(`B${at + 2}`, "L1")}<c r="C${at + 2}"><v>${40 + at}</v></c></row>`,
  ),
].join("");

const related = (list: readonly (readonly [type: string, target: string])[]) =>
  `<Relationships xmlns="${PACKAGE}">${list
    .map(
      ([type, target], at) =>
        `<Relationship Id="rId${at + 1}" Type="${OFFICE}/${type}" Target="${target}"/>`,
    )
    .join("")}</Relationships>`;

const joined = (...pieces: readonly Text[]): Uint8Array<ArrayBuffer> =>
  Uint8Array.from(
    Buffer.concat(pieces.map((piece) => (typeof piece === "string" ? strToU8(piece) : piece))),
  );

/** The workbook of an attack, packed by fflate. */
export function attackBook(attack: Attack): Uint8Array {
  const { rows = OWN_ROWS, inSheet = "", inBook = "", tables = [], encode } = attack;
  const parts: Record<string, Text> = {
    "[Content_Types].xml": `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/><Default Extension="xml" ContentType="application/xml"/><Override PartName="/xl/workbook.xml" ContentType="application/vnd.openxmlformats-officedocument.spreadsheetml.sheet.main+xml"/></Types>`,
    "_rels/.rels": related([["officeDocument", "xl/workbook.xml"]]),
    "xl/workbook.xml": `<workbook xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheets><sheet name="Own" sheetId="1" r:id="rId1"/></sheets>${inBook}</workbook>`,
    "xl/_rels/workbook.xml.rels": related([
      ["worksheet", "worksheets/sheet1.xml"],
      ...(attack.sharedStrings === undefined
        ? []
        : [["sharedStrings", "sharedStrings.xml"] as const]),
      ...(attack.customXml === undefined ? [] : [["customXml", "../customXml/item1.xml"] as const]),
    ]),
    "xl/worksheets/sheet1.xml": joined(
      `<worksheet xmlns="${MAIN}" xmlns:r="${OFFICE}"><sheetData>`,
      rows,
      `</sheetData>${inSheet}</worksheet>`,
    ),
    "xl/worksheets/_rels/sheet1.xml.rels": related([
      ...tables.map((_, at) => ["table", `../tables/table${at + 1}.xml`] as const),
      ...(attack.comments === undefined ? [] : [["comments", "../comments1.xml"] as const]),
    ]),
    ...Object.fromEntries(tables.map((text, at) => [`xl/tables/table${at + 1}.xml`, text])),
    ...(attack.sharedStrings === undefined ? {} : { "xl/sharedStrings.xml": attack.sharedStrings }),
    ...(attack.comments === undefined ? {} : { "xl/comments1.xml": attack.comments }),
    ...(attack.customXml === undefined ? {} : { "customXml/item1.xml": attack.customXml }),
  };
  const bytes: Unzipped = Object.fromEntries(
    Object.entries(parts).map(([name, text]) => [
      name,
      encode && name.startsWith("xl/") && typeof text === "string"
        ? Uint8Array.from(encode(text))
        : joined(text),
    ]),
  );
  return zipSync(bytes, { mtime: new Date("2026-01-01T00:00:00Z"), level: 9 });
}

/** A record workbook of ours, of which some parts say something else. */
export async function changedBook(
  changes: Readonly<Record<string, (text: string) => string>>,
): Promise<Uint8Array> {
  const parts = unzipSync((await writeBook(planFor(longLineup(1)))).file);
  for (const [name, change] of Object.entries(changes)) {
    const part = parts[name];
    if (!part) throw new Error(`the workbook has no part ${name}`);
    parts[name] = Uint8Array.from(strToU8(change(strFromU8(part))));
  }
  return zipSync(parts, { mtime: new Date("2026-01-01T00:00:00Z") });
}
