import { expect, test } from "vitest";
import { validationOf, validationTitle } from "../../../src/look/validation";
import { FURTHER_KINDS } from "../../../src/records/kinds";
import { writesOf } from "../../../src/sheets/plan/appended";
import { EXCEL_LIMITS } from "../../../src/sheets/plan/excelLimits";
import { isNumberFormat } from "../../../src/sheets/plan/numberFormat";
import { planFor } from "../../../src/sheets/plan/plan";
import { equippedInFull, longLineup } from "../../support/lineups";

// The limits of a validation's texts: [MS-OI29500] 2.1.613; the others: "Excel specifications and limits".
const plans = (["IEC", "NETA"] as const).map((basis) =>
  planFor({
    ...equippedInFull(longLineup(2, { basis })),
    furtherRecords: FURTHER_KINDS.map((kind) => ({ kind })),
  }),
);
const sheets = plans.flatMap((plan) => plan.sheets);

test("names of sheets and tables are such as Excel takes, each once", () => {
  for (const { sheets } of plans)
    for (const names of [sheets.map(({ sheet }) => sheet), sheets.map(({ table }) => table)])
      expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
  for (const { sheet, table } of sheets) {
    expect(sheet).toMatch(/^[^\\/?*[\]:']+$/);
    expect(sheet.length).toBeLessThanOrEqual(EXCEL_LIMITS.sheetName.most);
    expect(table).toMatch(/^[A-Za-z_][\w.]*$/);
  }
});

test("headers are text, and no two of a table alike", () => {
  for (const { table, columns } of sheets) {
    const headers = columns.map(({ header }) => header.toLowerCase());
    expect(new Set(headers).size, table).toBe(headers.length);
    expect(headers, table).not.toContain("");
  }
});

test.each(
  sheets.flatMap((planned) =>
    planned.columns.map((column) => [planned.table, column.header, column] as const),
  ),
)(
  "%s, %s: title, messages and list of its validation are no longer than Excel takes",
  (_table, header, column) => {
    const validation = validationOf(column, "A5", "Instruments");
    if (!validation) return;
    expect(validationTitle(header).length).toBeLessThanOrEqual(EXCEL_LIMITS.errorTitle.most);
    expect(validation.message.length).toBeLessThanOrEqual(EXCEL_LIMITS.errorMessage.most);
    expect((column.help ?? "").length).toBeLessThanOrEqual(EXCEL_LIMITS.promptMessage.most);
    const list = validation.type === "values" ? validation.values.join(",") : "";
    expect(list.length).toBeLessThanOrEqual(EXCEL_LIMITS.listSource.most);
  },
);

test("a workbook has no more number formats than Excel takes", () => {
  for (const { sheets } of plans) {
    const formats = sheets.flatMap(({ columns }) => columns.flatMap(({ format }) => format ?? []));
    expect(new Set(formats).size).toBeGreaterThan(5);
    expect(new Set(formats).size).toBeLessThanOrEqual(EXCEL_LIMITS.numberFormats.most);
    expect(formats.filter((format) => !isNumberFormat(format))).toEqual([]);
  }
});

// Those that are understood: ECMA-376 Part 1, 18.8.30 and 18.8.31, built-in codes and examples.
test.each([
  "General",
  "@",
  "0.00%",
  "# ?/?",
  "0.00E+00",
  "##0.0E+0",
  "m/d/yyyy h:mm",
  "h:mm:ss AM/PM",
  "[h]:mm:ss",
  "mm:ss.0",
  "#,##0_);[Red](#,##0)",
  '_(* #,##0.00_);_(* (#,##0.00);_(* "-"??_);_(@_)',
  "[<=100]0;[>100]0.0",
  "[$-409]d-mmm-yy",
  '0.0" µΩ"',
])("%s is understood as a number format", (code) => {
  expect(isNumberFormat(code)).toBe(true);
});

test.each([
  ["", "is blank"],
  ['0.0" kV', "leaves its quotation mark open"],
  ["0;0;0;@;0", "has a fifth section"],
  ["0.0 kV", "has letters without quotation marks"],
  ["0 d", "is number and day"],
  ["@;0", "has its text before its numbers"],
  ["[Pink]0", "names a colour that there is not"],
  ["0\\", "ends in a backslash"],
  [`"${"x".repeat(EXCEL_LIMITS.numberFormat.most)}"`, "is too long"],
])("%s is none: it %s", (code) => {
  expect(isNumberFormat(code)).toBe(false);
});

test("texts and formulas fit into their cells", () => {
  for (const planned of sheets)
    for (const { value } of writesOf(planned)) {
      const text = String(value ?? "");
      expect(text.length).toBeLessThanOrEqual(EXCEL_LIMITS.cellText.most);
      expect(text.split("\n").length - 1).toBeLessThanOrEqual(EXCEL_LIMITS.cellLineFeeds.most);
    }
});
