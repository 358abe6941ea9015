import fc from "fast-check";
import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import { openPackage } from "../../src/xlsx/package/package";
import { readPieces } from "../../src/xlsx/scan/readPieces";
import { scanSheet } from "../../src/xlsx/scan/scanSheet";
import { NO_TEXTS } from "../../src/xlsx/scan/sharedTexts";
import { sheetText } from "../../src/xlsx/xml/sheetText";

/** What stands in sheets: rows of the plain form and of others, and between them what a row might be mistaken for. */
const ROWS = [
  '<row r="1" hidden="1"><c r="A1" t="str"><v>Ω=K0001</v></c><c r="B1"><f>A1&amp;"x"</f><v>1.5</v></c></row>',
  '<!-- <row r="9"><c r="A9"><v>9</v></c></row> -->',
  '<row r="2"><c r="A2" t="inlineStr"><is><t>a row&gt; of <![CDATA[</row>]]></t></is></c><c r="C2" s="1"><v>-2e3</v></c></row>',
  '<row r="3"/>',
  '<row r="4"><c r="A4"><f t="array" ref="A4:B5">C2*2</f><v>4</v></c></row>',
  '<row r="5" ht="1"><c r="A5"><f t="shared" si="0" ref="A5:A6">C5+1</f><v>5</v></c></row>',
  '<row r="6"><c r="A6"><f t="shared" si="0"/><v>6</v></c><c r="B6" t="b"><v>1</v></c></row>',
  '<extLst><ext uri="x"><row>no row</row></ext></extLst>',
  '<row r="7"><c r="A7" t="str"><v>Ω=K0001</v></c><c r="B7"><f>A1&amp;"x"</f><v>1.5</v></c></row>',
];
const HEAD =
  '<?xml version="1.0"?><worksheet><!-- <sheetData> --><cols><col min="2" max="3" hidden="1"/></cols>';
const TAIL = '<mergeCells count="1"><mergeCell ref="A1:B1"/></mergeCells></worksheet>';
const sheet = (rows = ROWS.join("")) => strToU8(`${HEAD}<sheetData>${rows}</sheetData>${TAIL}`);
const GIVEN = { texts: NO_TEXTS, unseen: [undefined, "colour"] } as const;

async function* cut(bytes: Uint8Array, lengths: readonly number[]) {
  let at = 0;
  for (let piece = 0; at < bytes.length; piece++) {
    const length = lengths[piece % lengths.length] ?? 1;
    // What was given is overwritten, as a buffer that is used again.
    const given = bytes.slice(at, at + length);
    yield given;
    given.fill(0);
    at += length;
  }
}

const whole = (bytes: Uint8Array) => {
  const scanned = scanSheet(bytes, "sheet.xml", GIVEN);
  return { scanned, around: sheetText(bytes, scanned.places, "sheet.xml") };
};

describe("a sheet that is read as it is unpacked", () => {
  test("is what it is when read whole, wherever it is cut", async () => {
    const bytes = sheet();
    const expected = whole(bytes);
    expect(expected.scanned.hiddenRows).toEqual([0, 4]);
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.integer({ min: 1, max: 400 }), { minLength: 1, maxLength: 5 }),
        async (lengths) => {
          expect(await readPieces(cut(bytes, lengths), "sheet.xml", GIVEN)).toEqual(expected);
        },
      ),
      { numRuns: 200 },
    );
    for (const none of [strToU8("<worksheet><sheetData/></worksheet>"), sheet("")])
      expect(await readPieces(cut(none, [3]), "sheet.xml", GIVEN)).toEqual(whole(none));
  });

  test("is refused in the same words where it is damaged", async () => {
    const bytes = sheet();
    const damages = [
      bytes.subarray(0, bytes.length - TAIL.length - 20),
      bytes.subarray(0, 40),
      sheet(`${ROWS.join("")}<rowe r="8"><c r="A8"><v>1</v></c></rowe>${ROWS.at(-1)}`),
      sheet(`${ROWS[0]}<row r="2"><c r="A2" t="q"><v>1</v></c></row>${ROWS[3]}`),
      strToU8(`${HEAD}</worksheet>`),
    ];
    for (const damaged of damages) {
      let said = "";
      try {
        whole(damaged);
      } catch (error) {
        said = error instanceof Error ? error.message : "";
      }
      expect(said).not.toBe("");
      for (const length of [7, 100])
        await expect(readPieces(cut(damaged, [length]), "sheet.xml", GIVEN)).rejects.toThrow(said);
    }
  });
});

describe("a long part", () => {
  const text = Array.from({ length: 100_000 }, (_, row) => `<row r="${row + 1}"/>`).join("\n");
  const file = zipSync({ "long.xml": strToU8(text), "short.xml": strToU8("<a/>") });
  const joined = async (pieces: AsyncIterable<Uint8Array>) => {
    const all: Uint8Array[] = [];
    for await (const piece of pieces) all.push(piece.slice());
    return { count: all.length, text: Buffer.concat(all).toString() };
  };

  test("comes in pieces, a short one at once, and both are what they are as a whole", async () => {
    const pack = openPackage(file);
    const long = await joined(pack.pieces("long.xml"));
    expect(long.text).toBe(pack.text("long.xml"));
    expect(long.count).toBeGreaterThan(2);
    expect(await joined(pack.pieces("short.xml"))).toEqual({ count: 1, text: "<a/>" });
    pack.put("long.xml", "other");
    expect(await joined(pack.pieces("long.xml"))).toEqual({ count: 1, text: "other" });
  });

  test("in another encoding comes at once, in UTF-8", async () => {
    const wide = new Uint8Array(Buffer.from(`\ufeff${text}`, "utf16le"));
    const { text: read, count } = await joined(
      openPackage(zipSync({ "long.xml": wide })).pieces("long.xml"),
    );
    expect([read.replace("\ufeff", ""), count]).toEqual([text, 1]);
  });

  test("is refused where its bytes are not those that were packed, or not as many", async () => {
    // In the directory: the sum of the part, and its size.
    for (const field of [16, 24]) {
      const damaged = file.slice();
      const at = Buffer.from(file).indexOf("PK\u0001\u0002") + field;
      damaged[at] = (damaged[at] ?? 0) ^ 1;
      await expect(joined(openPackage(damaged).pieces("long.xml"))).rejects.toThrow(
        /its part long\.xml cannot be unpacked/,
      );
    }
    const spoilt = file.slice();
    spoilt.fill(0xff, 1_000, 1_100);
    await expect(joined(openPackage(spoilt).pieces("long.xml"))).rejects.toThrow(
      /its part long\.xml cannot be unpacked/,
    );
  });
});
