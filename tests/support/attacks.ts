import { deflateRawSync } from "node:zlib";
import { strToU8, zipSync } from "fflate";
import { attackBook, cell, changedBook } from "./attackBook";
import { longLineup } from "./lineups";

/** One hostile or broken file, by what it is. */
export interface AttackFile {
  readonly what: string;
  /** The command that it is given to. */
  readonly command: "check" | "lineup";
  readonly make: () => Promise<Uint8Array> | Uint8Array;
}

const times = (count: number, make: (at: number) => string): string =>
  Array.from({ length: count }, (_, at) => make(at)).join("");

/** Long texts, made in pieces. */
const longText = (count: number, make: (at: number) => string): Uint8Array => {
  const pieces: Buffer[] = [];
  for (let from = 0; from < count; from += 50_000)
    pieces.push(Buffer.from(times(Math.min(50_000, count - from), (at) => make(from + at))));
  return Buffer.concat(pieces);
};

const ROWS = 1_000_000;
const STRINGS = 5_000_000;
/** Unlike its neighbours, so that it packs badly. */
const scattered = (at: number) => ((at * 2_654_435_761) >>> 0).toString(36);

const sharedTexts = () =>
  attackBook({
    sharedStrings: Buffer.concat([
      Buffer.from('<sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main">'),
      longText(STRINGS, (at) => `<si><t>${scattered(at)}</t></si>`),
      Buffer.from("</sst>"),
    ]),
    rows: longText(
      ROWS,
      (row) => `<row>${times(5, (column) => `<c t="s"><v>${row * 5 + column}</v></c>`)}</row>`,
    ),
  });

const manyCells = () =>
  attackBook({
    rows: longText(ROWS, (row) => `<row>${times(10, (at) => `<c><v>${row + at}</v></c>`)}</row>`),
  });

/** Directory records that all name the one entry there is. */
function overlapping(): Uint8Array {
  const count = 8_000;
  const packed = deflateRawSync(Buffer.alloc(400_000, 32), { level: 9 });
  const local = Buffer.alloc(30);
  local.writeUInt32LE(0x04034b50, 0);
  const records = Array.from({ length: count }, (_, at) => {
    const name = Buffer.from(`xl/worksheets/sheet${at}.xml`);
    const record = Buffer.alloc(46);
    record.writeUInt32LE(0x02014b50, 0);
    record.writeUInt16LE(8, 10);
    record.writeUInt32LE(packed.length, 20);
    record.writeUInt32LE(400_000, 24);
    record.writeUInt16LE(name.length, 28);
    return Buffer.concat([record, name]);
  });
  const directory = Buffer.concat(records);
  const end = Buffer.alloc(22);
  end.writeUInt32LE(0x06054b50, 0);
  end.writeUInt16LE(count, 8);
  end.writeUInt16LE(count, 10);
  end.writeUInt32LE(directory.length, 12);
  end.writeUInt32LE(local.length + packed.length, 16);
  return Buffer.concat([local, packed, directory, end]);
}

const table = (name: string, columns = ["Panel", "Pole", "Contact resistance (µΩ)"]) =>
  `<table xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" id="1" name="${name}" displayName="${name}" ref="A1:C5"><tableColumns count="${columns.length}">${columns
    .map((column, at) => `<tableColumn id="${at + 1}" name="${column}"/>`)
    .join("")}</tableColumns></table>`;

const HEAD = `<row r="1">${cell("A1", "Panel")}${cell("B1", "Pole")}${cell("C1", "Contact resistance (µΩ)")}</row>`;
const rowsWith = (panel: string, value: string) =>
  HEAD +
  times(
    200,
    (at) =>
      `<row r="${at + 2}">${cell(`A${at + 2}`, panel)}${cell(`B${at + 2}`, "L1")}${cell(`C${at + 2}`, value)}</row>`,
  );

const REMEMBERED = "urn:gearproof:remembered:1";
const MEMORY = "urn:gearproof:memory:1";

export const ATTACKS: readonly AttackFile[] = [
  { what: "five million shared strings", command: "check", make: sharedTexts },
  { what: "ten million cells", command: "check", make: manyCells },
  { what: "8,000 entries over the same bytes", command: "check", make: overlapping },
  {
    what: "a part that unpacks to 300 MB of blanks",
    command: "check",
    make: () =>
      zipSync({ "xl/worksheets/sheet1.xml": [Buffer.alloc(300_000_000, 32), { level: 9 }] }),
  },
  {
    what: "a lineup of 10,000 panels",
    command: "lineup",
    make: () => strToU8(JSON.stringify(longLineup(10_000))),
  },
  {
    what: "a lineup of 2,000 panels",
    command: "lineup",
    make: () => strToU8(JSON.stringify(longLineup(2_000))),
  },
  {
    what: "what is remembered unpacks to 1 GB",
    command: "check",
    make: () =>
      attackBook({
        customXml: `<gearproof xmlns="${REMEMBERED}">deflate:${deflateRawSync(Buffer.alloc(1_000_000_000, 32), { level: 9 }).toString("base64")}</gearproof>`,
      }),
  },
  {
    what: "custom XML of 200,000 beginnings",
    command: "check",
    make: () =>
      attackBook({ customXml: `<a xmlns="${MEMORY}">${"<gearproof >".repeat(200_000)}</a>` }),
  },
  {
    what: "custom XML that is none",
    command: "check",
    make: () => attackBook({ customXml: `<gearproof xmlns="${MEMORY}">{"panels": [` }),
  },
  {
    what: "our memory spoilt in a record workbook",
    command: "check",
    make: () => changedBook({ "customXml/item1.xml": (text) => text.replace(/\{/g, "[") }),
  },
  {
    what: "10,000 joins over whole columns",
    command: "check",
    make: () =>
      attackBook({
        inSheet: `<mergeCells>${'<mergeCell ref="A1:XFD1048576"/>'.repeat(10_000)}</mergeCells>`,
      }),
  },
  {
    what: "joins of no cells, of nonsense, of one another",
    command: "check",
    make: () =>
      attackBook({
        inSheet: `<mergeCells>${["", "A", "A1:", "ZZZZ1:A9", "A0:B0", "B9:A1", "A1:B2", "B2:C3", "#REF!"].map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`,
      }),
  },
  {
    what: "links over several cells and links to nothing",
    command: "check",
    make: () =>
      attackBook({
        inSheet: `<mergeCells><mergeCell ref="A1:B2"/></mergeCells><hyperlinks><hyperlink ref="A1:B2" location="Own!A1"/><hyperlink ref="A3:C3 B4" location=""/><hyperlink ref="C5" r:id="rId99"/></hyperlinks>`,
      }),
  },
  {
    what: "a cell at the far end",
    command: "check",
    make: () =>
      attackBook({
        rows: `${rowsWith("H01", "40")}<row r="1048576">${cell("XFD1048576", "stray")}</row>`,
      }),
  },
  {
    what: "table names of 8,000 characters",
    command: "check",
    make: () =>
      attackBook({ tables: [table(`T${"a_".repeat(4_000)}`), table(`T${"1.".repeat(4_000)}`)] }),
  },
  {
    what: "panels of 32,000 characters",
    command: "check",
    make: () => attackBook({ rows: rowsWith(`H${"0 -".repeat(10_666)}`, "40") }),
  },
  {
    what: "readings of 100,000 digits",
    command: "check",
    make: () =>
      attackBook({ rows: rowsWith("H01", `${"1".repeat(50_000)}.${"1".repeat(50_000)}x`) }),
  },
  {
    what: "200,000 beginnings of instructions",
    command: "check",
    make: () => attackBook({ rows: rowsWith("H01", "40") + "<?".repeat(200_000) }),
  },
  {
    what: "a text of 200,000 beginnings of sections",
    command: "check",
    make: () =>
      attackBook({
        rows: `${HEAD}<row r="2"><c t="str"><v>${"&lt;![CDATA[ &amp;".repeat(2)}${"<!--a-->".repeat(200_000)}</v></c></row>`,
      }),
  },
  {
    what: "elements 100,000 deep",
    command: "check",
    make: () =>
      attackBook({ inSheet: `${"<extLst>".repeat(100_000)}${"</extLst>".repeat(100_000)}` }),
  },
  {
    what: "100,000 formulas over the same cells",
    command: "check",
    make: () =>
      attackBook({
        rows: longText(
          100_000,
          (row) =>
            `<row r="${row + 1}"><c r="A${row + 1}"><f t="array" ref="A${row + 1}:B${row + 1}">1+1</f><v>2</v></c><c r="B${row + 1}"><v>2</v></c></row>`,
        ),
      }),
  },
  {
    what: "a formula of 8,000 brackets",
    command: "check",
    make: () =>
      attackBook({
        rows: `${HEAD}<row r="2"><c r="A2"><f>${"(".repeat(8_000)}1${")".repeat(8_000)}</f><v>1</v></c></row>`,
      }),
  },
  {
    what: "a million notes",
    command: "check",
    make: () =>
      attackBook({
        comments: Buffer.concat([
          Buffer.from(
            `<comments xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><commentList>`,
          ),
          longText(
            1_000_000,
            (at) => `<comment ref="A${at + 1}"><text><t>${scattered(at)}</t></text></comment>`,
          ),
          Buffer.from("</commentList></comments>"),
        ]),
      }),
  },
  {
    what: "parts in UTF-16",
    command: "check",
    make: () =>
      attackBook({
        encode: (text) =>
          Buffer.from(`\ufeff<?xml version="1.0" encoding="UTF-16"?>${text}`, "utf16le"),
      }),
  },
];
