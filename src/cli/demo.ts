import { mkdirSync, readdirSync, rmSync } from "node:fs";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { commandLineFor } from "../messages/commandLine";
import { messagesFor } from "../messages/messages";
import { reportHtml } from "../report/html";
import { buildBook, buildWords } from "./buildBook";
import { checkFile } from "./checkFile";
import { writeWhole } from "./files";
import { intakeBook, takenWords } from "./intakeBook";
import { progress } from "./progress";
import { findingTable, matrixTable, summaryLine } from "./terminal";

const SAMPLES = `${relative(".", fileURLToPath(new URL("../../sample-workbooks", import.meta.url)))}/`;
const NAME = "harbour-substation";

/** The whole job on the invented scenario: lineup, readings from exports, evaluation, findings, page. */
export async function demo(folder: string): Promise<string> {
  const messages = messagesFor("en");
  const { demo: text, intake, build, check: results } = commandLineFor("en");
  mkdirSync(folder, { recursive: true });
  const built = `${folder}/${NAME}-empty.xlsx`;
  const book = `${folder}/${NAME}.xlsx`;
  const page = `${folder}/${NAME}.html`;
  const exports = readdirSync(SAMPLES)
    .filter((name) => /\.(csv|tsv|txt)$/.test(name))
    .sort()
    .map((name) => `${SAMPLES}${name}`);
  const bar = progress(4);
  bar.step(text.building);
  rmSync(built, { force: true });
  const made = await buildBook(`${SAMPLES}${NAME}.lineup.json`, built);
  bar.step(text.placing);
  const taken = await intakeBook(built, exports, book, { replace: false });
  bar.step(text.checking);
  const report = await checkFile(book);
  bar.step(text.writing);
  writeWhole(
    page,
    reportHtml(`${NAME}.xlsx`, new Date().toISOString().slice(0, 10), report, messages),
  );
  bar.end();
  return [
    text.invented,
    "",
    buildWords(made, build),
    commandLineFor("en").wrote(built),
    "",
    ...taken.map((one) => takenWords(one, intake)),
    "",
    matrixTable(report, results),
    "",
    findingTable(report.findings, results, 4),
    "",
    summaryLine(report, results),
    text.caution,
    "",
    text.workbook(book),
    text.page(page),
  ].join("\n");
}
