import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { reportHtml } from "../report/html";
import { checkFile } from "./checkCommand";
import { writeWhole } from "./files";
import { intakeBook, takenWords } from "./intakeCommand";
import { buildBook, buildWords } from "./lineupCommand";
import { progress } from "./progress";
import { findingTable, matrixTable, summaryLine } from "./terminal";

const SAMPLES = `${relative(".", fileURLToPath(new URL("../../sample-workbooks", import.meta.url)))}/`;
const NAME = "harbour-substation";

/** The whole job on the invented scenario: lineup, readings from exports, evaluation, findings, page. */
export async function demo(folder: string): Promise<string> {
  mkdirSync(folder, { recursive: true });
  const built = `${folder}/${NAME}-empty.xlsx`;
  const book = `${folder}/${NAME}.xlsx`;
  const page = `${folder}/${NAME}.html`;
  const exports = readdirSync(SAMPLES)
    .filter((name) => /\.(csv|tsv|txt)$/.test(name))
    .sort()
    .map((name) => `${SAMPLES}${name}`);
  const bar = progress(4);
  bar.step("building the record workbook");
  rmSync(built, { force: true });
  const made = await buildBook(`${SAMPLES}${NAME}.lineup.json`, built);
  bar.step("placing the exports' readings");
  const taken = await intakeBook(built, exports, book, { replace: false });
  bar.step("checking");
  const report = await checkFile(book);
  bar.step("writing the page");
  writeWhole(page, reportHtml(`${NAME}.xlsx`, new Date().toISOString().slice(0, 10), report));
  bar.end();
  return [
    "Gearproof demo: an invented lineup at an invented site; every name, number and reading is made up.",
    "",
    buildWords(made, built),
    "",
    ...taken.map(takenWords),
    "",
    matrixTable(report),
    "",
    findingTable(report.findings, 4),
    "",
    summaryLine(report),
    "Gearproof evaluates records; it never says that equipment is safe to energize.",
    "",
    `Workbook: ${book}`,
    `Page:     ${page}`,
  ].join("\n");
}
