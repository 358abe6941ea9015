import { expect, test } from "vitest";
import { insertFormula, selectedCells } from "../../../src/excel/workbook";
import { putBox, sheetNamed } from "../../../src/standin/book";
import { inExcel, newExcel, state } from "../excelSupport";

const select = (host: ReturnType<typeof newExcel>, top: number, left: number, bottom = top) => {
  host.book.active = { sheet: "Sheet1", area: { top, left, bottom, right: left } };
};

test("the selected cells come with their place and what they hold", async () => {
  const host = newExcel();
  putBox(host.book, sheetNamed(host.book, "Sheet1"), 1, 1, { value: 1200 });
  putBox(host.book, sheetNamed(host.book, "Sheet1"), 2, 1, { value: "> 2 TΩ" });
  select(host, 1, 1, 2);
  expect(await inExcel(host, selectedCells)).toEqual({
    sheet: "Sheet1",
    address: "B2:B3",
    values: [[1200], ["> 2 TΩ"]],
  });
});

test("more than a thousand cells are refused before they are read", async () => {
  const host = newExcel();
  select(host, 0, 0, 1000);
  await expect(inExcel(host, selectedCells)).rejects.toThrow(
    "1001 cells are selected; select at most 1000",
  );
});

test("a formula goes into an empty cell, and into no other", async () => {
  const host = newExcel();
  putBox(host.book, sheetNamed(host.book, "Sheet1"), 0, 0, { value: "mine" });
  select(host, 0, 0);
  const before = state(host.book);
  const insert = () => inExcel(host, (context) => insertFormula(context, "=GEAR.WITHSTAND(12)"));
  await expect(insert()).rejects.toThrow("Sheet1!A1 is not empty");
  expect(state(host.book)).toEqual(before);
  select(host, 4, 2);
  expect(await insert()).toEqual({ sheet: "Sheet1", address: "C5" });
  expect(JSON.stringify(state(host.book))).toContain("GEAR.WITHSTAND(12)");
  await expect(insert()).rejects.toThrow("Sheet1!C5 is not empty");
});

test("what somebody typed there in the meantime is put back", async () => {
  const host = newExcel();
  select(host, 4, 2);
  const typed = inExcel(host, (context) => {
    const sync = context.sync.bind(context);
    let batches = 0;
    context.sync = (async (passed: unknown) => {
      const synced = await sync(passed);
      batches += 1;
      if (batches === 1) putBox(host.book, sheetNamed(host.book, "Sheet1"), 4, 2, { value: 9000 });
      return synced;
    }) as typeof context.sync;
    return insertFormula(context, "=GEAR.WITHSTAND(12)");
  });
  await expect(typed).rejects.toThrow("Sheet1!C5 is not empty");
  expect(sheetNamed(host.book, "Sheet1").cells[4]?.[2]?.value).toBe(9000);
  expect(JSON.stringify(state(host.book))).not.toContain("WITHSTAND");
});
