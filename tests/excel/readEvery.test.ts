import { expect, test } from "vitest";
import { readExcel } from "../../src/excel/workbook";
import { messagesFor } from "../../src/messages/messages";
import { bookOfFile } from "../../src/standin/bench/bookFile";
import { standIn } from "../../src/standin/host";
import { checkSurvey } from "../../src/survey/checkSurvey";
import { readBook } from "../../src/xlsx/readBook";
import { FAULTS, ownBook } from "../support/ownBook";
import { inExcel } from "./excelSupport";

test("a workbook in a layout of its own is recognised and judged in Excel as in a file", async () => {
  const file = await ownBook();
  const host = standIn(await bookOfFile(file));
  const inSheets = await inExcel(host, (context) => readExcel(context, { sheets: "every" }));
  const report = (snapshot: typeof inSheets) =>
    checkSurvey(snapshot, 46_400, { ratedkV: 15, basis: "NETA" }, messagesFor("en").survey);
  const ofFile = report(await readBook(file));
  expect(report(inSheets)).toEqual(ofFile);
  expect(
    ofFile.blocks.map(({ sheet, kind, panels, readings, units }) => ({
      sheet,
      kind,
      panels: panels.length,
      readings,
      units,
    })),
  ).toEqual([
    { sheet: "IR summary", kind: "insulation", panels: 10, readings: 29, units: ["GΩ"] },
    { sheet: "Contacts", kind: "contact", panels: 10, readings: 30, units: ["µΩ"] },
  ]);
  const places = ofFile.findings.map(({ sheet, address }) => `${sheet}!${address}`);
  expect(places).toEqual(expect.arrayContaining(Object.values(FAULTS)));
});
