import { expect, test } from "vitest";
import { EXCEL_LIMITS } from "../../src/sheets/plan/excelLimits";
import { addSheet, boxAt, newBook, putBox, sheetNamed } from "../../src/standin/book";
import { type StandInHost, standIn } from "../../src/standin/host";
import { loadClient } from "../../src/standin/loadClientInNode";

const client = loadClient();

/** A workbook with a table of one row, at A1. */
async function small(): Promise<StandInHost> {
  const book = newBook();
  const sheet = addSheet(book, "Readings");
  for (const [column, value] of ["Panel", "R"].entries()) putBox(book, sheet, 0, column, { value });
  const host = standIn(book);
  await client.run(host, async (context) => {
    const sheet = context.workbook.worksheets.getItem("Readings");
    sheet.tables.add(sheet.getRange("A1:B2"), true).name = "Own";
    await context.sync();
  });
  return host;
}

/** The code of Excel's that a piece of work ends with. */
const codeOf = async (work: (sheet: Excel.Worksheet) => void): Promise<string> => {
  const host = await small();
  try {
    await client.run(host, async (context) => {
      work(context.workbook.worksheets.getItem("Readings"));
      await context.sync();
    });
    return "taken";
  } catch (error) {
    return (error as { code: string }).code;
  }
};

const { cellText, formula, sheetName, tableName, promptTitle, promptMessage } = EXCEL_LIMITS;
const { errorMessage, errorTitle, listSource } = EXCEL_LIMITS;
const prompt = (title: string, message: string) => (sheet: Excel.Worksheet) => {
  sheet.getRange("D1").dataValidation.prompt = { title, message, showPrompt: true };
};
const alert = (title: string, message: string) => (sheet: Excel.Worksheet) => {
  const style = "Warning";
  sheet.getRange("D1").dataValidation.errorAlert = { title, message, style, showAlert: true };
};

const CASES: readonly (readonly [
  string,
  number,
  (text: string) => (sheet: Excel.Worksheet) => void,
])[] = [
  [
    "a cell's text",
    cellText.most,
    (text) => (sheet) => {
      sheet.getRange("D1").values = [[text]];
    },
  ],
  [
    "a formula",
    formula.most,
    (text) => (sheet) => {
      sheet.getRange("D1").formulas = [[`=${text.slice(1)}`]];
    },
  ],
  [
    "a sheet's name",
    sheetName.most,
    (text) => (sheet) => {
      sheet.context.workbook.worksheets.add(text);
    },
  ],
  [
    "a table's name",
    tableName.most,
    (text) => (sheet) => {
      sheet.tables.getItem("Own").name = text;
    },
  ],
  ["a prompt's title", promptTitle.most, (text) => prompt(text, "")],
  ["a prompt's message", promptMessage.most, (text) => prompt("", text)],
  ["an error's title", errorTitle.most, (text) => alert(text, "")],
  ["an error's message", errorMessage.most, (text) => alert("", text)],
  [
    "a list",
    listSource.most,
    (text) => (sheet) => {
      const list = { inCellDropDown: true, source: text };
      sheet.getRange("D1").dataValidation.rule = { list };
    },
  ],
];

test.each(CASES)("%s of %i characters is taken, one more is refused", async (_what, most, work) => {
  expect(await codeOf(work("x".repeat(most)))).toBe("taken");
  expect(await codeOf(work("x".repeat(most + 1)))).toBe("InvalidArgument");
});

test("a number format that Excel does not understand is refused", async () => {
  const format = (code: string) => (sheet: Excel.Worksheet) => {
    sheet.getRange("D1").numberFormat = [[code]];
  };
  expect(await codeOf(format('0.0" kV"'))).toBe("taken");
  expect(await codeOf(format('0.0" kV'))).toBe("InvalidArgument");
});

// Office.js reference, Worksheet.delete: a very hidden sheet is not deleted, which fails with `InvalidOperation`.
test.each([
  ["Hidden", "taken"],
  ["VeryHidden", "InvalidOperation"],
  ["Gone", "InvalidArgument"],
] as const)("a sheet that is made %s and then deleted: %s", async (visibility, code) => {
  const work = (sheet: Excel.Worksheet) => {
    sheet.context.workbook.worksheets.add("Other");
    sheet.visibility = visibility as "Hidden";
    sheet.delete();
  };
  expect(await codeOf(work)).toBe(code);
});

test("a range that is kept moves with its cells, and is no use once they are taken out", async () => {
  const host = await small();
  const { insertRows, insertColumns, deleteRows } = await import("../../src/standin/edits");
  const sheet = sheetNamed(host.book, "Readings");
  const used = client.run(host, async (context) => {
    const cell = context.workbook.worksheets.getItem("Readings").getRange("B2");
    cell.load("address");
    await context.sync();
    insertRows(host.book, sheet, 0, 2);
    insertColumns(host.book, sheet, 1, 1);
    cell.values = [[5]];
    cell.load("address");
    await context.sync();
    expect([cell.address, boxAt(sheet, 3, 2)?.value]).toEqual(["Readings!C4", 5]);
    deleteRows(host.book, sheet, 3, 1);
    cell.values = [[6]];
    await context.sync();
  });
  await expect(used).rejects.toMatchObject({ code: "InvalidReference" });
});
