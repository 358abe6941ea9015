import { describe, expect, test } from "vitest";
import {
  addSheet,
  boxAt,
  newBook,
  putBox,
  type StandInBook,
  sheetNamed,
} from "../../src/standin/book";
import { deleteRows, insertRows, sortTable } from "../../src/standin/edits";
import { type StandInHost, standIn } from "../../src/standin/host";
import { loadClient } from "../../src/standin/loadClientInNode";

const client = loadClient();

/** A workbook with one sheet and a table of two rows, at B3. */
function small(): StandInBook {
  const book = newBook();
  const sheet = addSheet(book, "Readings");
  const rows = [
    ["Panel", "R MΩ"],
    ["=K01", 1250],
    ["=K02", 980],
  ];
  rows.forEach((row, at) => {
    row.forEach((value, column) => {
      putBox(book, sheet, 2 + at, 1 + column, { value });
    });
  });
  return book;
}

async function withTable(): Promise<StandInHost> {
  const host = standIn(small());
  await client.run(host, async (context) => {
    const sheet = context.workbook.worksheets.getItem("Readings");
    const table = sheet.tables.add(sheet.getRange("B3:C5"), true);
    table.name = "Own";
    await context.sync();
  });
  host.reset();
  return host;
}

const code = async (work: Promise<unknown>): Promise<string> => {
  try {
    await work;
    return "no error";
  } catch (error) {
    return (error as { code: string }).code;
  }
};

describe("the genuine client over the stand-in", () => {
  test("writes, reads back in one batch, and knows a sheet that is not there", async () => {
    const host = await withTable();
    await client.run(host, async (context) => {
      const sheet = context.workbook.worksheets.getItem("Readings");
      const range = sheet.getRange("B4:C5");
      range.values = [
        [null as unknown as string, 1300],
        ["'=K07", 5],
      ];
      range.load("values,formulas,address,rowIndex");
      const none = context.workbook.worksheets.getItemOrNullObject("Elsewhere");
      await context.sync();
      expect(range.values).toEqual([
        ["=K01", 1300],
        ["=K07", 5],
      ]);
      expect([range.address, range.rowIndex]).toEqual(["Readings!B4:C5", 3]);
      expect(none.isNullObject).toBe(true);
    });
    // The read and write, and the client's own release of its ranges afterwards.
    expect(host.batches).toHaveLength(2);
    expect(host.batches[0]?.up).toBeGreaterThan(500);
  });

  test("keeps the client's own rules: nothing is read that was not loaded", async () => {
    const host = await withTable();
    const unread = client.run(host, async (context) => {
      const table = context.workbook.tables.getItem("Own");
      await context.sync();
      return table.name;
    });
    expect(await code(unread)).toBe("PropertyNotLoaded");
  });

  test("keeps the client's own rules: outside a run a range does not outlive its batch", async () => {
    const host = await withTable();
    const context = client.context(host);
    const cell = context.workbook.worksheets.getItem("Readings").getRange("C4:C5").getCell(0, 0);
    await context.sync();
    expect(() => cell.load("values")).toThrow(/across multiple "context.sync" calls/);
  });

  test("refuses by name what it does not have", async () => {
    const host = await withTable();
    const asked = client.run(host, async (context) => {
      context.workbook.worksheets.getItem("Readings").slicers.load("items/name");
      await context.sync();
    });
    await expect(asked).rejects.toMatchObject({
      code: "ApiNotFound",
      message: "the stand-in has no Worksheet.slicers",
    });
  });

  test.each([
    ["=K01", { formula: "K01" }],
    ["'=K01", { value: "=K01" }],
    ["007", { value: 7 }],
    ["'007", { value: "007" }],
    ["true", { value: true }],
    ["May 5", { value: 45_000 }],
    ["> 2 TΩ", { value: "> 2 TΩ" }],
    ["L1-E", { value: "L1-E" }],
  ])("takes %s as if it were typed", async (text, box) => {
    const host = await withTable();
    await client.run(host, async (context) => {
      context.workbook.worksheets.getItem("Readings").getRange("H9").values = [[text]];
      await context.sync();
    });
    expect(boxAt(sheetNamed(host.book, "Readings"), 8, 7)).toMatchObject(box);
  });
});

describe("what it can be made to do", () => {
  const write = (host: StandInHost, values: unknown[] = [1, 2, 3, 4]) =>
    client.run(host, async (context) => {
      const sheet = context.workbook.worksheets.getItem("Readings");
      values.forEach((value, index) => {
        sheet.getRange(`F${index + 1}`).values = [[value]];
      });
      await context.sync();
    });
  const column = (host: StandInHost) =>
    [0, 1, 2, 3].map((row) => boxAt(sheetNamed(host.book, "Readings"), row, 5)?.value);

  test.each([
    ["before", [undefined, undefined, undefined, undefined]],
    ["midway", [1, undefined, undefined, undefined]],
    ["after", [1, 2, 3, 4]],
  ] as const)("fail a batch %s its actions", async (when, held) => {
    const host = await withTable();
    host.fault = { batch: 1, when, code: "GeneralException" };
    expect(await code(write(host))).toBe("GeneralException");
    expect(column(host)).toEqual(held);
  });

  test("be in the middle of a cell's editing", async () => {
    const host = await withTable();
    host.editing = true;
    expect(await code(write(host))).toBe("InvalidOperationInCellEditMode");
  });

  test("have a protected sheet, with cells unlocked", async () => {
    const host = await withTable();
    const sheet = sheetNamed(host.book, "Readings");
    sheet.protected = true;
    expect(await code(write(host))).toBe("AccessDenied");
    sheet.unlocked.push({ top: 0, left: 5, bottom: 1, right: 5 });
    expect(await code(write(host, [1, 2]))).toBe("no error");
  });

  test("miss an item", async () => {
    const host = await withTable();
    const gone = client.run(host, async (context) => {
      context.workbook.tables.getItem("Gone").load("name");
      await context.sync();
    });
    expect(await code(gone)).toBe("ItemNotFound");
  });

  test("refuse a payload over 5 MB, up and down", async () => {
    const host = await withTable();
    // A row of 40 texts: one cell takes 32,767 characters.
    const big = [new Array<string>(40).fill("x".repeat(32_500))];
    const rows = (numbers: readonly number[]) =>
      client.run(host, async (context) => {
        const sheet = context.workbook.worksheets.getItem("Readings");
        for (const row of numbers) sheet.getRange(`F${row}:AS${row}`).values = big;
        await context.sync();
      });
    expect(await code(rows([1, 2, 3, 4]))).toBe("RequestPayloadSizeLimitExceeded");
    await rows([1, 2]);
    await rows([3, 4]);
    const read = client.run(host, async (context) => {
      const range = context.workbook.worksheets.getItem("Readings").getRange("F1:AS2");
      range.load("values,formulas");
      await context.sync();
    });
    expect(await code(read)).toBe("ResponsePayloadSizeLimitExceeded");
  });

  test("let the user change a cell between two batches", async () => {
    const host = await withTable();
    const sheet = sheetNamed(host.book, "Readings");
    host.between = (batch) => {
      if (batch === 2) putBox(host.book, sheet, 3, 2, { value: 77 });
    };
    await client.run(host, async (context) => {
      const cell = context.workbook.worksheets.getItem("Readings").getRange("C4");
      cell.load("values");
      await context.sync();
      expect(cell.values).toEqual([[1250]]);
      cell.load("values");
      await context.sync();
      expect(cell.values).toEqual([[77]]);
    });
  });

  test("be slow", async () => {
    const host = await withTable();
    host.delay = 20;
    let answered = false;
    const writing = write(host).then(() => {
      answered = true;
    });
    await Promise.resolve();
    expect(answered).toBe(false);
    await writing;
    expect(answered).toBe(true);
  });
});

test("conditional formats move with inserted and deleted rows, and stay where they are in a sort", async () => {
  const host = await withTable();
  await client.run(host, async (context) => {
    const sheet = context.workbook.worksheets.getItem("Readings");
    const format = sheet.getRanges("B4:C4,B5").conditionalFormats.add("Custom");
    format.custom.rule.formula = "=TRUE";
    format.custom.format.fill.color = "#112233";
    await context.sync();
  });
  const sheet = sheetNamed(host.book, "Readings");
  insertRows(host.book, sheet, 4, 2);
  expect(sheet.formats[0]?.areas.map(({ top, bottom }) => [top, bottom])).toEqual([
    [3, 3],
    [6, 6],
  ]);
  deleteRows(host.book, sheet, 3, 1);
  expect(sheet.formats[0]?.areas.map(({ top }) => top)).toEqual([5]);
  sortTable(host.book, "Own", (one, other) => String(other[0]).localeCompare(String(one[0])));
  expect(sheet.formats[0]?.areas.map(({ top }) => top)).toEqual([5]);
});
