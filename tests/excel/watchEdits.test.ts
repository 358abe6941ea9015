import { expect, test } from "vitest";
import { listen, readExcel, rereadRows, type Touched } from "../../src/excel/workbook";
import { editedRows } from "../../src/sheets/editedRows";
import { planFor } from "../../src/sheets/plan/plan";
import { tablesOf } from "../../src/sheets/snapshot";
import { putBox, sheetNamed } from "../../src/standin/book";
import { calculateRecords } from "../../src/standin/calculate";
import { insertRows } from "../../src/standin/edits";
import { longLineup } from "../support/lineups";
import { builtExcel, contents, inExcel } from "./excelSupport";

/** Excel with a lineup's workbook, what it tells collected. */
async function listening() {
  const host = await builtExcel(planFor(longLineup(3)));
  const edited: Touched[] = [];
  const selected: Touched[] = [];
  await inExcel(host, (context) =>
    listen(context, {
      edited: (cells) => edited.push(cells),
      selected: (cells) => selected.push(cells),
    }),
  );
  const snapshot = await inExcel(host, (context) => readExcel(context));
  host.reset();
  return { host, edited, selected, snapshot };
}
const cell = (row: number, column: number) => ({
  top: row,
  left: column,
  bottom: row,
  right: column,
});

test("an edit is told of with its sheet and cells, and so is a selection", async () => {
  const { host, edited, selected, snapshot } = await listening();
  const sheet = snapshot.sheets.find(({ name }) => name === "Torque");
  host.tell("changed", "Torque", cell(4, 9));
  host.tell("selectionChanged", "Torque", { top: 4, left: 0, bottom: 6, right: 2 });
  await expect
    .poll(() => [edited, selected])
    .toEqual([
      [{ sheetId: sheet?.id, address: "J5", moved: false }],
      [{ sheetId: sheet?.id, address: "A5:C7", moved: false }],
    ]);
});

test("the rows of an edit are read again in one round trip, and nothing else is", async () => {
  const { host, edited, snapshot } = await listening();
  const book = host.book;
  putBox(book, sheetNamed(book, "Torque"), 5, 9, { value: 61 });
  calculateRecords(book);
  host.tell("changed", "Torque", cell(5, 9));
  await expect.poll(() => edited.length).toBe(1);
  const [touched] = edited;
  const rows = editedRows(snapshot, touched?.sheetId ?? "", touched?.address ?? "");
  const fresh = await inExcel(host, (context) => rereadRows(context, snapshot, rows ?? []));
  expect(host.batches.length).toBe(1);
  expect(host.batches[0]?.down).toBeLessThan(6_000);
  if (!fresh) throw new Error();
  expect(contents(fresh)).toEqual(contents(await inExcel(host, (context) => readExcel(context))));
  const [before, after] = [tablesOf(snapshot), tablesOf(fresh)];
  expect(after.filter((table, at) => table !== before[at]).map(({ name }) => name)).toEqual([
    "GearTorque",
  ]);
  expect(before.find(({ name }) => name === "GearTorque")?.cell(1, 9)).not.toBe(61);
});

test("a table that moved or grew asks for the whole workbook", async () => {
  const { host, snapshot } = await listening();
  const table = tablesOf(snapshot).find(({ name }) => name === "GearTorque");
  if (!table) throw new Error();
  insertRows(host.book, sheetNamed(host.book, "Torque"), 6, 1);
  expect(
    await inExcel(host, (context) => rereadRows(context, snapshot, [{ table, rows: [0] }])),
  ).toBeUndefined();
});
