import fc from "fast-check";
import { expect, test } from "vitest";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import { decode } from "../../src/intake/text/decode";
import type { RecordKind } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { planFor } from "../../src/sheets/plan/plan";
import { refill } from "../../src/sheets/plan/refill";
import { recordTables } from "../../src/sheets/recordTable";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { english, inWords } from "../support/inWords";
import { sampleLineup } from "../support/lineups";

const lineup = sampleLineup();
const contact = KINDS.find(({ id }) => id === "contact") as RecordKind;
const rows = contact.rows(lineup);
const HEAD = "Panel,Part,Pole,R (µΩ),Tested by,Remarks";
const GOOD = "=H01,Q0,L1,31,Crew 2,fine";

/** What becomes of a file's bytes: the sentence that refuses it, or cells and sentences by line. */
const take = (bytes: Uint8Array, name = "hostile.csv") => {
  const decoded = decode(bytes);
  if (!decoded.ok) return { refused: decoded.say(english), cells: [], said: [] };
  const read = readExport(decoded.value.text, { name });
  if (!read.ok) return { refused: read.say(english), cells: [], said: [] };
  const { placed, unplaced } = placeReadings(read.value, [{ kind: contact, rows }], {
    replace: false,
  });
  return { refused: undefined, cells: placed, said: unplaced };
};
const taken = (text: string, name?: string) => take(new TextEncoder().encode(text), name);

/** The signs that a spreadsheet takes for the beginning of a formula or command, full width ones too. */
const SIGNS = [
  "=",
  "+",
  "-",
  "@",
  "|",
  "＝",
  "＋",
  "－",
  "＠",
  "\t=",
  "\r=",
  " =",
  "\u200b=",
  "\u00a0=",
];

test.each(SIGNS)(
  "text that begins with %j is no cell's text, and the line's reading is taken",
  (sign) => {
    const text = `${sign}1+1`;
    const { cells, said } = taken(`${HEAD}\n=H01,Q0,L1,31,"${text}","${text}"\n`);
    expect(cells.find(({ column }) => column === "reading")?.value).toBe(31);
    expect(cells.filter(({ column }) => column === "by" || column === "remarks")).toEqual([]);
    expect(inWords(said).map(({ reason }) => reason)).toEqual([
      expect.stringMatching(/begins like a formula and is not taken over/),
      expect.stringMatching(/begins like a formula and is not taken over/),
    ]);
  },
);

test("a file's name is no formula in the origin column", () => {
  const { cells } = taken(`${HEAD}\n${GOOD}\n`, '=HYPERLINK("x")\u0007.csv');
  expect(cells.find(({ column }) => column === "origin")?.value).toBe('HYPERLINK("x") .csv line 2');
});

test("whatever is placed is text or a number in the workbook file, never a formula", async () => {
  const { file } = await writeBook(planFor(lineup));
  const tables = recordTables(await readBook(file));
  const table = tables.find(({ kind }) => kind.id === "contact");
  if (!table) throw new Error("no table");
  const read = readExport(
    `${HEAD}\n=H01,Q0,L1,31 (=cmd),a =1+1,<f>1+1</f>\n=H01,Q0,L2,32,"x\u0001y",""\n`,
    { name: "hostile.csv" },
  );
  if (!read.ok) throw new Error(read.say(english));
  const { placed } = placeReadings(read.value, tables, { replace: false });
  const written = await writeCells(file, [
    { table: table.table, writes: refill(table, placed, lineup) },
  ]);
  const after = recordTables(await readBook(written)).find(({ kind }) => kind.id === "contact");
  expect(after?.rows.slice(0, 2)).toMatchObject([
    { reading: 31, by: "a =1+1", remarks: "<f>1+1</f>; =cmd" },
    { reading: 32, by: "x y" },
  ]);
  for (const { id } of contact.columns.filter(({ role }) => role === "entry" || role === "note"))
    expect(after?.table.formula(0, after.at.get(id) ?? -1)).toBeUndefined();
});

test("a line of megabytes costs itself alone, and its message is short", () => {
  const long = "x".repeat(3_000_000);
  for (const bad of [`=H02,Q0,L1,${long},,`, `${long},Q0,L1,31,,`, `=H02,Q0,L1,31,${long},`]) {
    const { cells, said } = taken(`${HEAD}\n${GOOD}\n${bad}\n=H01,Q0,L2,32,,\n`);
    expect(
      cells.filter(({ column, source }) => column === "reading" && source.line !== 3).length,
    ).toBe(2);
    expect(said.map(({ source }) => source.line)).toContain(3);
    for (const { reason } of said) expect(reason.length).toBeLessThan(2000);
  }
});

test("a line of a million cells is refused by name: far down alone, near the titles with its file", () => {
  const wide = `=H02,Q0,L1,31${",1".repeat(1_000_000)}\n`;
  const { cells, said } = taken(`${HEAD}\n${`${GOOD}\n`.repeat(200)}${wide}`);
  expect(cells.find(({ column }) => column === "reading")?.value).toBe(31);
  expect(inWords(said)).toMatchObject([
    { source: { line: 202 }, reason: expect.stringMatching(/^has 1000004 cells under 6 titles/) },
  ]);
  expect(taken(`${HEAD}\n${GOOD}\n${wide}`).refused).toMatch(
    /has 1000004 columns on line 3; at most 16384 are read/,
  );
});

test("a million titles are refused, whatever parts them", () => {
  for (const mark of [",", ";", "\t", "|"]) {
    const { refused } = taken(
      `Panel${`${mark}R (µΩ)`.repeat(1_000_000)}\n=H01${`${mark}1`.repeat(9)}\n`,
    );
    expect(refused).toMatch(/has \d+ columns on line 1; at most 16384 are read|no row of titles/);
    expect((refused ?? "").length).toBeLessThan(5000);
  }
});

test("a million columns are refused under a delimiter that was given, too", () => {
  const wide = "Panel,Pole,".concat("R (µΩ),".repeat(1_000_000));
  expect(
    inWords(readExport(`${wide}\n=H01,L1`, { name: "wide.csv", delimiter: "," })),
  ).toMatchObject({
    ok: false,
    say: expect.stringMatching(/has 1000003 columns on line 1; at most 16384 are read/),
  });
});

test("NUL and mixed encodings are refused with their lines", () => {
  expect(taken(`${HEAD}\n${GOOD}\n=H01,Q0,L2,3\0 2,,\n`).refused).toMatch(
    /NUL character on line 3/,
  );
  const utf8 = new TextEncoder().encode(`${HEAD}\n${GOOD}\n=H01,Q0,L2,32,Crew `);
  expect(take(new Uint8Array([...utf8, 0xe9, 0x0a])).refused).toMatch(
    /mixes encodings: line 1 is UTF-8 and line 3 is not/,
  );
});

test("a million quotation marks, open or closed, cost their lines alone", () => {
  for (const quotes of ['"'.repeat(1_000_001), '""'.repeat(500_000), `${'"a\n'.repeat(300_000)}`]) {
    const { cells, refused } = taken(`${HEAD}\n${GOOD}\n=H02,Q0,L1,31,${quotes}\n`);
    expect(refused).toBeUndefined();
    expect(cells.find(({ column }) => column === "reading")?.value).toBe(31);
  }
});

test("whatever the bytes, cells are harmless and everything else is a sentence", () => {
  const piece = fc.oneof(
    fc.constantFrom(
      ...SIGNS,
      "\0",
      "\u0001",
      "\u202e",
      '"',
      ",",
      ";",
      "\n",
      "\r\n",
      "\ufeff",
      "1e999",
    ),
    fc.constantFrom(
      GOOD,
      HEAD,
      "=H01",
      "Q0",
      "L1",
      "31",
      "(=x)",
      "* =x",
      "5 (after cleaning)",
      "> 2 TΩ",
    ),
    fc.string({ unit: "binary", maxLength: 6 }),
  );
  const bytes = fc
    .tuple(
      fc.array(piece, { maxLength: 40 }),
      fc.oneof(fc.constant(new Uint8Array()), fc.uint8Array({ maxLength: 4 })),
      fc.constantFrom("", `${HEAD}\n`, `${HEAD}\n${GOOD}\n`),
    )
    .map(([pieces, raw, head]) => {
      const text = new TextEncoder().encode(`${head}${pieces.join(",")}`);
      return new Uint8Array([...text, ...raw]);
    });
  let withCells = 0;
  fc.assert(
    fc.property(bytes, (file) => {
      const { refused, cells, said } = take(file);
      if (cells.length > 0) withCells += 1;
      for (const { value } of cells)
        if (typeof value === "number") expect(Number.isFinite(value)).toBe(true);
        else expect(String(value).normalize("NFKC")).toMatch(/^[^=+\-@|\p{Cc}\s][^\p{Cc}]*$/u);
      for (const reason of refused === undefined ? said.map(({ reason }) => reason) : [refused]) {
        expect(reason).not.toBe("");
        expect(inWords(reason)).not.toMatch(/[\p{Cc}]/u);
      }
    }),
    { numRuns: 400 },
  );
  expect(withCells).toBeGreaterThan(40);
});
