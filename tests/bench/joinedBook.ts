import { createWriteStream } from "node:fs";
import { strFromU8, strToU8, unzipSync, Zip, ZipDeflate } from "fflate";

/** A workbook of our own making, and by how much its panels and sections are to be counted on. */
export interface Part {
  readonly file: Uint8Array;
  readonly panels: number;
  readonly sections: number;
}

const SHEET = /^xl\/worksheets\/sheet\d+\.xml$/;
const TABLE = /^xl\/tables\/table\d+\.xml$/;
const MEMORY = /^customXml\/item\d+\.xml$/;
/** Headers stand in this row; rows of records come after it. */
const HEAD = 4;

/**
 * Joins record workbooks of the same sheets to one long workbook, sheet by sheet and row by row, since no
 * file library here writes a million rows of formulas and tables in bounded memory. What names no panel and
 * no section stands in it once.
 */
export async function joinBooks(parts: readonly Part[], out: string): Promise<void> {
  const [first] = parts;
  if (!first) return;
  const texts = new Map<string, number>();
  const lists = parts.map((part) => textsOf(part, texts));
  const stream = createWriteStream(out);
  const closed = new Promise<void>((done, failed) => stream.on("close", done).on("error", failed));
  const zip = new Zip((error, chunk, final) => {
    if (error) stream.destroy(error);
    else stream.write(chunk);
    if (final) stream.end();
  });
  const names = Object.keys(unzipSync(first.file));
  const lastRows = new Map<string, number>();
  const put = async (name: string, write: (push: (text: string) => void) => void) => {
    const entry = new ZipDeflate(name, { level: 1 });
    zip.add(entry);
    write((text) => entry.push(strToU8(text)));
    entry.push(new Uint8Array(0), true);
    while (stream.writableLength > 1 << 20) await new Promise((done) => setImmediate(done));
  };
  for (const name of names.filter((one) => SHEET.test(one)))
    await put(name, (push) => lastRows.set(name, joinSheet(name, parts, lists, push)));
  for (const name of names.filter((one) => !SHEET.test(one))) {
    const text = partOf(first, name);
    const rows = lastRows.get(name.replace("tables/table", "worksheets/sheet"));
    await put(name, (push) => {
      if (name === "xl/sharedStrings.xml") push(stringsXml(texts));
      else if (TABLE.test(name) && rows) push(reaching(text, bottomOf(text), rows));
      else if (MEMORY.test(name)) push(joinMemory(name, parts));
      else push(text);
    });
  }
  zip.end();
  await closed;
}

const partOf = ({ file }: Part, name: string): string => {
  const bytes = unzipSync(file, { filter: (entry) => entry.name === name })[name];
  return bytes ? strFromU8(bytes) : "";
};

/** A text with its panels and sections counted on. */
const countedOn = (text: string, { panels, sections }: Part): string =>
  text
    .replace(
      /=K(\d{4,})/g,
      (_all, number) => `=K${String(Number(number) + panels).padStart(4, "0")}`,
    )
    .replace(/Section (\d+)/g, (_all, number) => `Section ${Number(number) + sections}`);

interface Texts {
  /** By its number in the part, its number in the joined workbook. */
  readonly numbers: readonly number[];
  /** Whether it names a panel or a section. */
  readonly places: readonly boolean[];
}

const textsOf = (part: Part, texts: Map<string, number>): Texts => {
  const own = [...partOf(part, "xl/sharedStrings.xml").matchAll(/<si>(.*?)<\/si>/gs)].map(
    ([, text = ""]) => text,
  );
  return {
    numbers: own.map((text) => {
      const now = countedOn(text, part);
      const number = texts.get(now) ?? texts.size;
      texts.set(now, number);
      return number;
    }),
    places: own.map((text) => /=K\d{4}|Section \d/.test(text)),
  };
};

const stringsXml = (texts: ReadonlyMap<string, number>) =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?><sst xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" count="${texts.size}" uniqueCount="${texts.size}">${[...texts.keys()].map((text) => `<si>${text}</si>`).join("")}</sst>`;

/** Writes a sheet of all parts; gives its last row. */
const joinSheet = (
  name: string,
  parts: readonly Part[],
  lists: readonly Texts[],
  push: (text: string) => void,
): number => {
  let last = 0;
  let end = "";
  let before = 0;
  for (const [at, part] of parts.entries()) {
    const xml = partOf(part, name);
    const from = xml.indexOf("<row ");
    const to = xml.lastIndexOf("</row>") + "</row>".length;
    if (at === 0) {
      push(xml.slice(0, from).replace(/<dimension [^>]*>/, ""));
      end = xml.slice(to);
    }
    const { numbers, places } = lists[at] as Texts;
    let text = "";
    for (const [row, number] of xml.slice(from, to).matchAll(/<row r="(\d+)".*?(?:<\/row>)/gs)) {
      if (at === 0) before = Number(number);
      let placed = false;
      const cells = row.replace(/t="s"([^>]*)><v>(\d+)/g, (_all, style, number) => {
        placed ||= places[Number(number)] ?? false;
        return `t="s"${style}><v>${numbers[Number(number)]}`;
      });
      if (at > 0 && (Number(number) <= HEAD || !placed)) continue;
      last += 1;
      // Within the first part rows may be left out of the file.
      if (at === 0) last = Number(number);
      text += cells.replace(/ r="([A-Z]*)\d+"/g, (_all, column) => ` r="${column}${last}"`);
      if (text.length > 1 << 20) {
        push(text);
        text = "";
      }
    }
    push(text);
  }
  push(reaching(end, before, last));
  return last;
};

const bottomOf = (table: string) => Number(/ref="[A-Z]+\d+:[A-Z]+(\d+)"/.exec(table)?.[1] ?? 0);

/** Areas that end at a row end at another. */
const reaching = (xml: string, before: number, last: number): string =>
  xml.replaceAll(new RegExp(`(="[A-Z]+\\d+:[A-Z]+)${before}"`, "g"), `$1${last}"`);

/** The lineup with the panels of all parts. */
const joinMemory = (name: string, parts: readonly Part[]): string => {
  const xmls = parts.map((part) => partOf(part, name));
  const [xml = ""] = xmls;
  const lineups = xmls.map(
    (one, at) => JSON.parse(countedOn(bodyOf(one), parts[at] as Part)) as { panels: unknown[] },
  );
  return xml.replace(
    bodyOf(xml),
    JSON.stringify({ ...lineups[0], panels: lineups.flatMap(({ panels }) => panels) }),
  );
};

const bodyOf = (xml: string): string => xml.slice(xml.indexOf("{"), xml.lastIndexOf("}") + 1);
