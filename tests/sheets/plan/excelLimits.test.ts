import { expect, test } from "vitest";
import { validationOf, validationTitle } from "../../../src/look/validation";
import { FURTHER_KINDS } from "../../../src/records/kinds";
import { writesOf } from "../../../src/sheets/plan/appended";
import { EXCEL_LIMITS } from "../../../src/sheets/plan/excelLimits";
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
  }
});

test("texts and formulas fit into their cells", () => {
  for (const planned of sheets)
    for (const { value } of writesOf(planned)) {
      const text = String(value ?? "");
      expect(text.length).toBeLessThanOrEqual(EXCEL_LIMITS.cellText.most);
      expect(text.split("\n").length - 1).toBeLessThanOrEqual(EXCEL_LIMITS.cellLineFeeds.most);
    }
});
