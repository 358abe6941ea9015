import { expect, test } from "vitest";
import { functions } from "../../src/functions/catalogue";
import { guide } from "../../src/functions/guide";
import { sourceOf } from "../../src/functions/sourceOf";
import { messagesFor } from "../../src/messages/messages";
import { exampleSheet } from "../../src/sheets/ours/exampleSheet";
import { readBook } from "../../src/xlsx/file";
import { withExamples } from "../../src/xlsx/writeExamples";

const made = exampleSheet(guide, sourceOf, messagesFor("en").functions.sheet);
const { planned, writes } = made;
const column = (id: string) => planned.columns.findIndex((one) => one.id === id);
const cell = (row: number, id: string) =>
  writes.find((one) => one.row === row && one.column === column(id));

test("every function is there, with its arguments in cells and its source as a formula", () => {
  expect(new Set(planned.rows.map(({ name }) => name))).toEqual(
    new Set(Object.keys(functions).map((name) => `GEAR.${name}`)),
  );
  const row = planned.rows.findIndex(({ formula }) => formula === '=GEAR.WITHSTAND(5, "NETA")');
  expect(planned.rows[row]).toMatchObject({ argument1: 5, argument2: "NETA" });
  expect(cell(row, "result")).toMatchObject({
    value: 14,
    formula:
      "_xldudf_GEAR_WITHSTAND(GearExamples[[#This Row],[Argument 1]],GearExamples[[#This Row],[Argument 2]])",
  });
  expect(cell(row, "source")?.formula).toBe(
    "_xldudf_GEAR_SOURCE(GearExamples[[#This Row],[Function]])",
  );
  expect(cell(row, "source")?.value).toMatch(/ANSI\/NETA ATS-2025/);
});

test("an array stands in cells side by side where it fits, else in its formula", () => {
  const of = (name: string) => planned.rows.findIndex((row) => row.name === `GEAR.${name}`);
  expect(cell(of("SPREAD"), "result")?.formula).toBe(
    "_xldudf_GEAR_SPREAD(GearExamples[[#This Row],[Argument 1]:[Argument 3]])",
  );
  expect(cell(of("KNEEPOINT"), "result")?.formula).toMatch(/^_xldudf_GEAR_KNEEPOINT\(\{10;20;/);
});

test("side by side they come to what they come to one below the other", () => {
  for (const { name, examples } of guide)
    for (const example of examples) {
      const given = example.arguments.map((one) =>
        Array.isArray(one) ? [one.flat()] : [[one]],
      ) as never[];
      const found = functions[name]?.(...given) as unknown;
      expect([found].flat(2)[0], example.formula).toEqual(example.result);
    }
});

test("the sheet goes into a file, new or there already, and is made anew in it", async () => {
  const first = await withExamples(made);
  const again = await readBook(await withExamples(made, first));
  expect(again.sheets.map(({ name }) => name)).toEqual(["Function examples"]);
});
