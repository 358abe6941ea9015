import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";
import { readXlsx } from "hucre/xlsx";
import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan";
import { writeBook, writeCells } from "../../src/workbook/file";
import { printNames } from "../../src/workbook/printNames";
import { longLineup } from "../support/lineups";

const TITLES = "_xlnm.Print_Titles";

test.each([
  ["Torque", { printTitlesRow: "$4:$4" }, [[TITLES, "'Torque'!$4:$4"]]],
  [
    "CT, VT",
    { printTitlesRow: "$4:$4", printTitlesColumn: "$A:$B" },
    [[TITLES, "'CT, VT'!$A:$B,'CT, VT'!$4:$4"]],
  ],
  ["CT, VT", { printTitlesRow: "$4:$4", printTitlesColumn: "'CT" }, [[TITLES, "'CT, VT'!$4:$4"]]],
  [
    "Panel's",
    { printArea: "$A$1:$B$2,$D$1:$E$2" },
    [["_xlnm.Print_Area", "'Panel''s'!$A$1:$B$2,'Panel''s'!$D$1:$E$2"]],
  ],
  ["Notes", { orientation: "portrait" }, []],
] as const)("%s %j", (name, pageSetup, expected) => {
  expect(printNames({ name, pageSetup }).map(({ name, range }) => [name, range])).toEqual(expected);
  expect(printNames({ name, pageSetup }).every(({ scope }) => scope === name)).toBe(true);
});

const names = (file: Uint8Array) =>
  [
    ...strFromU8(unzipSync(file)["xl/workbook.xml"] ?? new Uint8Array()).matchAll(
      /<definedName name="_xlnm[^>]*>([^<]*)/g,
    ),
  ].map(([, range = ""]) => range);

test("a sheet's name stands in quotes where a workbook tells what is printed, written anew or kept", async () => {
  const { file } = await writeBook(planFor(longLineup(1)));
  expect(names(file).filter((range) => range.includes("Control wiring")).length).toBeGreaterThan(0);
  for (const written of [file, await writeCells(file, [])])
    for (const range of names(written)) expect(range).toMatch(/^('[^']+'![$A-Z\d:]+,?)+$/);
});

test("print titles that somebody set on a sheet of their own stay", async () => {
  const { file } = await writeBook(planFor(longLineup(1)));
  const parts = unzipSync(file);
  const own = strFromU8(parts["xl/workbook.xml"] ?? new Uint8Array()).replace(
    "'Torque'!$4:$4",
    "'Torque'!$A:$C,'Torque'!$3:$4",
  );
  const kept = await writeCells(zipSync({ ...parts, "xl/workbook.xml": strToU8(own) }), []);
  const sheet = (await readXlsx(kept)).sheets.find(({ name }) => name === "Torque");
  expect(sheet?.pageSetup).toMatchObject({ printTitlesRow: "$3:$4", printTitlesColumn: "$A:$C" });
});
