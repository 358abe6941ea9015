import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { beforeAll, expect, test } from "vitest";
import { buildBook } from "../../src/cli/buildBook";
import { type IntakeOptions, intakeBook, takenWords, undoBook } from "../../src/cli/intakeBook";
import { commandLineFor } from "../../src/messages/commandLine";
import { recordTables } from "../../src/sheets/recordTable";
import { tablesOf } from "../../src/sheets/snapshot";
import { openFile } from "../../src/xlsx/book";
import { readBook, writeCells } from "../../src/xlsx/file";
import { memoryIn } from "../../src/xlsx/remembered";
import { SAMPLE } from "../support/lineups";

const rememberedIn = (file: Uint8Array) => memoryIn(openFile(file).pack).remembered;

const words = commandLineFor("en");

const folder = mkdtempSync(join(tmpdir(), "gearproof-intake-"));
const at = (name: string) => join(folder, name);
const write = (name: string, text: string | Uint8Array) => {
  writeFileSync(at(name), text);
  return at(name);
};
const HEAD = "Panel;Part;Pole;R (µΩ);Date;Time";

const take = (from: string, file: string, to: string, options: Partial<IntakeOptions> = {}) =>
  intakeBook(at(from), [at(file)], at(to), { replace: false, ...options });
const contact = async (book: string) => {
  const tables = recordTables(await readBook(readFileSync(at(book))));
  return tables.find(({ kind }) => kind.id === "contact")?.rows ?? [];
};
const history = async (book: string) => {
  const table = tablesOf(await readBook(readFileSync(at(book)))).find(
    ({ name }) => name === "GearHistory",
  );
  return Array.from({ length: table?.rowCount ?? 0 }, (_, row) =>
    [0, 1, 2, 3, 4, 5].map((column) => table?.cell(row, column) ?? null),
  ).filter((row) => row.some((cell) => cell !== null && cell !== ""));
};

beforeAll(async () => {
  await buildBook(SAMPLE, at("book.xlsx"));
  write("one.csv", `${HEAD}\n=H01;Q0;L1;31;2026-11-02;09:00\n=H01;Q0;L1;33;2026-11-02;08:00\n`);
  write("two.csv", `${HEAD}\n=H01;Q0;L1;27;2026-11-04;10:00\n`);
  await take("book.xlsx", "one.csv", "one.xlsx");
});

test("the later of two readings is placed, the earlier is in the history", async () => {
  expect((await contact("one.xlsx"))[0]).toMatchObject({
    reading: 31,
    origin: "one.csv line 2 at 09:00",
  });
  expect(await history("one.xlsx")).toEqual([
    ["Contacts", "=H01 · Breaker Q0 · L1", "R µΩ", 33, 46328 + 8 / 24, "one.csv line 3"],
  ]);
});

test("an intake of which all is there already is not what is taken back", async () => {
  await take("one.xlsx", "one.csv", "again.xlsx");
  expect(rememberedIn(readFileSync(at("again.xlsx")))?.last).toEqual(
    rememberedIn(readFileSync(at("one.xlsx")))?.last,
  );
});

test("what a reading that was typed over since had replaced stays in the history", async () => {
  await take("one.xlsx", "two.csv", "typed.xlsx", { replace: true });
  const book = readFileSync(at("typed.xlsx"));
  const found = recordTables(await readBook(book)).find(({ kind }) => kind.id === "contact");
  if (!found) throw new Error("no contacts");
  const column = found.at.get("reading") ?? -1;
  const writes = [{ row: 0, column, value: 28 }];
  writeFileSync(at("typed.xlsx"), await writeCells(book, [{ table: found.table, writes }]));
  expect(await undoBook(at("typed.xlsx"), at("typed-back.xlsx"), words)).toContain("holds 28 now");
  expect((await contact("typed-back.xlsx"))[0]).toMatchObject({ reading: 28, date: 46328 });
  expect((await history("typed-back.xlsx")).map(([, , column, value]) => [column, value])).toEqual([
    ["R µΩ", 33],
    ["R µΩ", 31],
  ]);
});

test("--replace moves what stood to the history; --undo takes the last two intakes back, each once", async () => {
  const held = await take("one.xlsx", "two.csv", "held.xlsx").catch((error) => error);
  expect(String(held)).toContain("Nothing could be placed");
  await take("one.xlsx", "two.csv", "two.xlsx", { replace: true });
  expect((await contact("two.xlsx"))[0]).toMatchObject({ reading: 27 });
  expect((await history("two.xlsx")).map(([, , column, value]) => [column, value])).toEqual([
    ["R µΩ", 33],
    ["R µΩ", 31],
    ["Date", 46328],
  ]);
  expect(await undoBook(at("two.xlsx"), at("back.xlsx"), words)).toMatch(
    /Undid the intake of .*two\.csv/,
  );
  expect(await contact("back.xlsx")).toEqual(await contact("one.xlsx"));
  expect(await history("back.xlsx")).toEqual(await history("one.xlsx"));
  expect(await undoBook(at("back.xlsx"), at("first.xlsx"), words)).toMatch(/intake of .*one\.csv/);
  expect(await contact("first.xlsx")).toEqual(await contact("book.xlsx"));
  expect(await history("first.xlsx")).toEqual([]);
  await expect(undoBook(at("first.xlsx"), at("more.xlsx"), words)).rejects.toThrow(
    /has no intake that can be undone/,
  );
});

test("what is said of a file is remembered in the workbook for others of its shape", async () => {
  write("odd-1.csv", "Wo;Was;Ref;Wert (µΩ);Tag\nX1;Q0;L1;31,250;03/11/2026\n");
  write("odd-2.csv", "Wo;Was;Ref;Wert (µΩ);Tag\nX1;Q0;L2;31,500;03/11/2026\n");
  const columns = write("columns.json", '{"Wo": "object", "Was": "part", "Ref": "position"}');
  const means = write("means.json", '{"object": {"X1": "=H03"}}');
  await take("book.xlsx", "odd-1.csv", "odd-1.xlsx", {
    columns,
    means,
    decimal: "comma",
    dateOrder: "day-first",
    remember: "crew 2",
  });
  expect(rememberedIn(readFileSync(at("odd-1.xlsx")))?.mappings).toMatchObject([
    { name: "crew 2", decimal: ",", dateOrder: "day-first", means: { object: { X1: "=H03" } } },
  ]);
  const [taken] = await take("odd-1.xlsx", "odd-2.csv", "odd-2.xlsx");
  expect(taken && takenWords(taken, words)).toContain(
    'Read with the saved settings "crew 2" of this workbook',
  );
  const rows = (await contact("odd-2.xlsx")).filter(({ object }) => object === "=H03");
  expect(rows.slice(0, 2)).toMatchObject([
    { reading: 31.25, date: 46329 },
    { reading: 31.5, date: 46329 },
  ]);
});

test("names that no row has are asked", async () => {
  write("near.csv", `${HEAD}\n=H01;Q0;L1;31;;\nH2;Q0;L1;31;;\n`);
  const [taken] = await take("book.xlsx", "near.csv", "near.xlsx");
  expect(taken && takenWords(taken, words)).toContain('object "H2" on 1 line: "=H02" (0.95)');
});

test("UTF-16 and Windows-1252 are read as they are", async () => {
  const text = `${HEAD}\n=H01;Q0;L1;31;;\n`;
  write("wide.csv", new Uint8Array(Buffer.from(text, "utf16le")));
  write("old.csv", new Uint8Array(Buffer.from(text.replace("µΩ", "µOhm"), "latin1")));
  for (const file of ["wide.csv", "old.csv"]) {
    const [taken] = await take("book.xlsx", file, "encoded.xlsx");
    expect(taken?.placement.placed[0]).toMatchObject({ value: 31 });
  }
});

test("titles in one's own words are known in the workbook from then on", async () => {
  write("words.json", '{"object": ["Schakelveld"], "part": ["Onderdeel"]}');
  const head = "Schakelveld;Onderdeel;Pole;R (µΩ)";
  write("dutch.csv", `${head}\n=H02;Q0;L1;31\n`);
  write("later.csv", `${head}\n=H02;Q0;L2;32\n`);
  await take("book.xlsx", "dutch.csv", "dutch.xlsx", { synonyms: at("words.json") });
  await take("dutch.xlsx", "later.csv", "later.xlsx");
  const rows = (await contact("later.xlsx")).filter(
    ({ object, part }) => object === "=H02" && part === "Breaker Q0",
  );
  expect(rows.map(({ reading }) => reading)).toEqual([31, 32, null]);
  expect(rememberedIn(readFileSync(at("later.xlsx")))?.words).toEqual({
    object: ["Schakelveld"],
    part: ["Onderdeel"],
  });
});

test.each([
  [
    "a unit whose sign was lost, once",
    "Panel;Part;Pole;R (µ?)\n=H02;Q0;L1;31\n=H02;Q0;L2;32\n=H02;Q0;L3;33\n=H03;Q0;L1;31 µΩ\n",
    /^ {4}lines 2 to 4: the unit "µ\?" in the title "R \(µ\?\)" has lost a sign/m,
  ],
  [
    "a quotation mark that does not close, by its line",
    `${HEAD}\n=H03;Q0;L1;31;;\n=H03;"Q0;L2;32;;\n=H03;Q0;L3;33;;\n`,
    /^ {4}line 3: a quotation mark opens a cell and none closes it/m,
  ],
  [
    "a quotation mark that does not close at a line's begin",
    `${HEAD}\n=H03;Q0;L1;31;;\n"=H03;Q0;L2;32;;\n=H03;Q0;L3;33;;\n`,
    /^ {4}line 3: a quotation mark opens a cell and none closes it/m,
  ],
  [
    "the same of a line with a phase a column",
    'Panel;Part;L1 (µΩ);L2 (µΩ);L3 (µΩ)\n=H03;Q0;31;32;33\n=H05;"Q0;31;32;33\n',
    /^ {4}line 3: a quotation mark opens a cell and none closes it/m,
  ],
])("an intake tells %s", async (what, content, told) => {
  write("told.csv", content);
  const [taken] = await take("book.xlsx", "told.csv", `${what}.xlsx`);
  expect(taken && takenWords(taken, words)).toMatch(told);
});

test("--set says what holds for all lines, and a name that no record has is refused before anything is read", async () => {
  write("poles.csv", "Pole;R (µΩ)\nL1;41\nL2;42\n");
  await take("book.xlsx", "poles.csv", "poles.xlsx", {
    set: { test: "contact", panel: "=H02", part: "Breaker Q0" },
  });
  const rows = (await contact("poles.xlsx")).filter(({ object }) => object === "=H02");
  expect(rows.slice(0, 2)).toMatchObject([{ reading: 41 }, { reading: 42 }]);
  await expect(
    take("book.xlsx", "poles.csv", "never.xlsx", { set: { stage: "during" } }),
  ).rejects.toThrow('--set stage: "during" is no stage; say before or after.');
});
