import { copyFileSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { relative } from "node:path";
import { fileURLToPath } from "node:url";
import { MANIFEST } from "../handover/manifest";
import { commandLineFor } from "../messages/commandLine";
import { messagesFor } from "../messages/messages";
import { daySerial, serialDay } from "../quantities/dates";
import { today } from "../quantities/today";
import { keyIds, rowKey } from "../records/kind";
import { reportHtml } from "../report/html";
import { cellAddress } from "../sheets/cells/address";
import { buildBook, buildWords } from "./buildBook";
import { writeWhole } from "./files/files";
import { handOver, handoverWords } from "./handover";
import { intakeBook, takenWords } from "./intakeBook";
import { checkFile } from "./jobs/checkFile";
import { ruleTitle } from "./jobs/checkJob";
import { repairBook } from "./repairBook";
import { findingList } from "./screen/findingList";
import { matrixTable } from "./screen/matrixTable";
import { progress } from "./screen/progress";
import { screenOf, wrap } from "./screen/screen";
import { summaryLines } from "./screen/terminal";

const SAMPLES = `${relative(".", fileURLToPath(new URL("../../sample-workbooks", import.meta.url)))}/`;
const NAME = "harbour-substation";
/** The export of a retest, and the repair before it: of the door that fails the earth continuity test. */
const RETEST = "retest/harbour-24-earthing-retest.csv";
const FAILED = { kind: "earthing", row: "=H07 · Door", column: "reading" };
const REPAIR = {
  cause: "Paint under the washers of the door's earth strap (invented)",
  work: "Earth connection",
  done: "Strap taken off, both faces cleaned and greased, bolts tightened (invented)",
  by: "Crew 2 (invented)",
} as const;
const REPAIRED_ON = "2026-11-10";

type Taken = Awaited<ReturnType<typeof intakeBook>>;

/** The whole job on the invented scenario: lineup, readings from exports, evaluation, findings, page. */
export async function demo(folder: string): Promise<string> {
  const messages = messagesFor("en");
  const { demo: text, build, check: results } = commandLineFor("en");
  mkdirSync(folder, { recursive: true });
  const built = `${folder}/${NAME}-empty.xlsx`;
  const book = `${folder}/${NAME}.xlsx`;
  const page = `${folder}/${NAME}.html`;
  const handover = `${folder}/handover`;
  const screen = screenOf();
  const bar = progress(6);
  bar.step(text.building);
  rmSync(built, { force: true });
  clearHandover(handover);
  const made = await buildBook(`${SAMPLES}${NAME}.lineup.json`, built);
  bar.step(text.placing);
  const taken = await intakeBook(built, exportsIn(folder), book, { replace: false });
  bar.step(text.repairing);
  const repaired = await repairAndRetest(taken, book, folder);
  bar.step(text.checking);
  const report = await checkFile(book);
  bar.step(text.writing);
  writeWhole(
    page,
    reportHtml(`${NAME}.xlsx`, new Date().toISOString().slice(0, 10), report, messages),
  );
  bar.step(text.handingOver);
  const handed = await handOver(book, handover);
  bar.end();
  return [
    wrap(text.invented, screen.width),
    "",
    wrap(buildWords(made, build), screen.width),
    commandLineFor("en").wrote(built),
    "",
    ...takenInShort(taken, screen.width),
    ...repaired.map((line) => wrap(line, screen.width)),
    "",
    matrixTable(report, results, screen),
    "",
    findingList(report.findings, results, screen, { titleOf: ruleTitle(report), all: false }),
    "",
    ...summaryLines(report, results),
    wrap(text.caution, screen.width),
    "",
    ...handoverWords(handover, handed)
      .split("\n")
      .map((line) => wrap(line, screen.width)),
    "",
    text.workbook(book),
    text.page(page),
    text.report(`${handover}/report.pdf`),
  ].join("\n");
}

/** Reopens the record that failed after its repair, and takes the retest in. */
async function repairAndRetest(taken: Taken, book: string, folder: string): Promise<string[]> {
  const placed = taken.flatMap(({ placement }) => placement.placed);
  const failed = placed.find(
    ({ table: { kind, rows }, row, column }) =>
      kind.id === FAILED.kind &&
      column === FAILED.column &&
      rowKey(rows[row] ?? {}, keyIds(kind)) === FAILED.row,
  );
  if (!failed) return [];
  const { table, row } = failed;
  const cell = `${table.table.sheet}!${cellAddress(table.table, row, table.at.get(FAILED.column) ?? 0)}`;
  // Nobody has repaired anything on a day that has not come.
  const date = serialDay(Math.min(daySerial(REPAIRED_ON), today()));
  const words = await repairBook(book, cell, book, { ...REPAIR, date });
  const name = RETEST.replace(/^.*\//, "");
  copyFileSync(`${SAMPLES}${RETEST}`, `${folder}/${name}`);
  const retest = await intakeBook(book, [`${folder}/${name}`], book, { replace: false });
  const text = commandLineFor("en");
  return [words, ...retest.flatMap((one) => takenWords(one, text).split("\n").slice(0, 1))];
}

/** The exports, copied beside the workbook that they go into, as a job has them. */
function exportsIn(folder: string): string[] {
  const names = readdirSync(SAMPLES).filter((name) => /\.(csv|tsv|txt)$/.test(name));
  for (const name of names) copyFileSync(`${SAMPLES}${name}`, `${folder}/${name}`);
  return names.sort().map((name) => `${folder}/${name}`);
}

/** Takes away the hand-over of the demo before this one, and nothing else. */
function clearHandover(folder: string): void {
  const manifest = `${folder}/${MANIFEST}`;
  if (!existsSync(manifest)) return;
  const { from } = JSON.parse(readFileSync(manifest, "utf8"));
  if (from === `${NAME}.xlsx`) rmSync(folder, { recursive: true });
}

/** In full of which exports something was left over, and how many were placed whole. */
function takenInShort(taken: Taken, width: number): string[] {
  const words = commandLineFor("en");
  const { demo: text } = words;
  const isWhole = ({ placement: { conflicts, unplaced } }: Taken[number]) =>
    conflicts.length + unplaced.length === 0;
  const whole = taken.filter(isWhole);
  const cells = whole.reduce((sum, { placement }) => sum + placement.placed.length, 0);
  return [
    text.placedWhole(whole.length, cells),
    ...taken
      .filter((one) => !isWhole(one))
      .flatMap((one) => takenWords(one, words).split("\n"))
      .map((line) => wrap(line.trimStart(), width, indentOf(line))),
  ];
}

const indentOf = (line: string) => " ".repeat(line.length - line.trimStart().length);
