import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { readBook, writeBook } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { readJson } from "./outside";
import {
  faultyPlan,
  findingsOf,
  readingDifferences,
  type SheetRead,
  uncalculated,
} from "./writers";

/**
 * Workbooks that openpyxl and LibreOffice wrote, kept by `npm run judge -- --keep`, against what openpyxl
 * reads in them, cell by cell.
 */
const FOLDER = "tests/judged/writers";
const book = async (name: string) => readBook(readFileSync(`${FOLDER}/${name}.xlsx`));

test.each(["openpyxl-1900", "openpyxl-1904", "libreoffice-1900", "libreoffice-1904"])(
  "%s: every cell is read as openpyxl reads it",
  async (name) => {
    const theirs = readJson<SheetRead[]>(`${FOLDER}/${name}.json`);
    expect(theirs.flatMap(({ cells }) => cells).length).toBeGreaterThan(150);
    expect(readingDifferences(await book(name), theirs)).toEqual([]);
  },
);

const ours = async () => readBook((await writeBook(faultyPlan())).file);

test("a record workbook that LibreOffice saved comes to the same findings", async () => {
  const findings = findingsOf(await ours());
  expect(findings.length).toBeGreaterThan(3);
  expect(findingsOf(await book("records-libreoffice"))).toEqual(findings);
});

test("a record workbook that openpyxl saved, its values gone, comes to the same findings", async () => {
  const findings = findingsOf(uncalculated(await ours()));
  expect(findings.length).toBeGreaterThan(3);
  expect(findingsOf(await book("records-openpyxl"))).toEqual(findings);
});

test("a column of one's own formula that is filled down is read on every row and told once", async () => {
  const filled = await book("records-filled");
  const ofContacts = findingsOf(filled).filter((line) => line.includes(" Contacts!"));
  const without = findingsOf(uncalculated(await ours())).filter((line) =>
    line.includes(" Contacts!"),
  );
  const more = ofContacts.filter((line) => !without.includes(line));
  expect(more).toHaveLength(1);
  expect(more[0]).toMatch(
    /own-formula Contacts!\w+5: .*The same applies to [\d,]+ more rows of the column\./,
  );
});

test("a workbook that counts its days from 1904 keeps them when it is written into", async () => {
  const file = readFileSync(`${FOLDER}/openpyxl-1904.xlsx`);
  const marked = await markFile(file, [
    { rule: "future-date", weight: "query", sheet: "Tables", address: "C6", message: "invented" },
  ]);
  expect(
    readingDifferences(
      await readBook(marked),
      readJson<SheetRead[]>(`${FOLDER}/openpyxl-1904.json`),
    ),
  ).toEqual([]);
});
