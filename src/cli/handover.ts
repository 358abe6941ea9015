import {
  existsSync,
  mkdirSync,
  readdirSync,
  renameSync,
  rmdirSync,
  rmSync,
  statSync,
} from "node:fs";
import { basename, dirname, join, resolve } from "node:path";
import { punchList } from "../check/punchList";
import { punchChanges } from "../check/punchWrites";
import { type Content, contentOf, isFinal } from "../handover/content";
import { exportsOf } from "../handover/exportsOf";
import { fingerprintOf, sha256 } from "../handover/fingerprint";
import { frozenWrites } from "../handover/frozenWrites";
import {
  MANIFEST,
  type Manifest,
  PUNCH_LIST,
  RECORDS,
  REPORT,
  TABLE,
  WORKBOOK,
} from "../handover/manifest";
import { recordsCsv } from "../handover/recordsCsv";
import { openBook } from "../intake/openBook";
import type { Paper } from "../look/page";
import { commandLineFor } from "../messages/commandLine";
import { messagesFor } from "../messages/messages";
import { today } from "../quantities/today";
import { writesOf } from "../sheets/appended";
import { punchSheet } from "../sheets/ours/punchSheet";
import { papersOf } from "../sheets/plannedSheet";
import type { RecordBook } from "../sheets/recordBook";
import { draftSheet } from "../xlsx/draftSheet";
import { freezeBook } from "../xlsx/freezeBook";
import { BookEdit } from "../xlsx/patch/bookEdit";
import { newBook } from "../xlsx/write/newBook";
import { checkOpened } from "./checkFile";
import { named, readBytes, UsageError, writeWhole } from "./files";
import { openBookAs } from "./openBookAs";

export interface HandoverOptions {
  readonly paper?: Extract<Paper, "a4" | "letter">;
  /** Told before each file is made. */
  readonly step?: (file: string) => void;
}

export interface HandedOver {
  readonly manifest: Manifest;
  readonly content: Content;
}

const EXPORTS = "exports";

/**
 * Makes the hand-over of a workbook: report, frozen workbook, punch list, records as data, the exports that
 * are found beside the workbook, and a manifest. The folder is made beside its place and renamed into it, so
 * that it is there whole or not at all.
 *
 * @throws {UsageError} where the folder holds something, or the workbook cannot be checked
 */
export async function handOver(
  file: string,
  folder: string,
  { paper, step = () => {} }: HandoverOptions = {},
): Promise<HandedOver> {
  if (existsSync(folder) && !isEmptyFolder(folder))
    throw new UsageError(({ handover }) => handover.notEmpty(folder));
  const { bytes, snapshot } = await openBookAs(file, {});
  const report = checkOpened(file, openBook(snapshot), today(), true);
  const messages = messagesFor("en");
  const content: Content = JSON.parse(JSON.stringify(contentOf(report)));
  const fingerprint = await fingerprintOf(content);
  const made = new Map<string, Uint8Array | string>();
  made.set(RECORDS, `${JSON.stringify(content, null, 1)}\n`);
  made.set(TABLE, recordsCsv(content.rows));
  step(WORKBOOK);
  const punch = punchChanges(report).change ?? [];
  const frozen = [...frozenWrites(report.context), ...punch];
  made.set(WORKBOOK, await named(file, () => freezeBook(bytes, frozen)));
  step(PUNCH_LIST);
  const items = punchList(report).map(({ cells }) => cells);
  const sheet = punchSheet(items, papersOf(content.lineup));
  const list = new BookEdit(newBook(messages.handover.punch));
  list.addSheet(draftSheet(sheet, writesOf(sheet)));
  made.set(PUNCH_LIST, list.save());
  step(REPORT);
  // The PDF library and React load only when a report is made.
  const [{ reportPages }, { writePdf }] = await Promise.all([
    import("../handover/reportPages"),
    import("./writePdf"),
  ]);
  made.set(REPORT, await writePdf(reportPages({ content, report, fingerprint, paper }, messages)));
  const { found, notFound } = exportsBeside(file, report.context.book);
  for (const [name, content] of found) made.set(`${EXPORTS}/${name}`, content);
  const manifest: Manifest = {
    format: "gearproof-handover-1",
    project: content.lineup.project.name,
    made: content.checked,
    final: isFinal(content),
    from: basename(file),
    fingerprint,
    files: await Promise.all([...made].map(([name, content]) => listed(name, content))),
    notFound,
  };
  made.set(MANIFEST, `${JSON.stringify(manifest, null, 1)}\n`);
  writeFolder(folder, made);
  return { manifest, content };
}

const listed = async (name: string, content: Uint8Array | string) => {
  const bytes = typeof content === "string" ? new TextEncoder().encode(content) : content;
  return { name, bytes: bytes.length, sha256: await sha256(bytes) };
};

/** The exports that a workbook names: those that stand beside it, and those that do not. */
function exportsBeside(file: string, book: RecordBook) {
  const names = exportsOf(book);
  const beside = (name: string) => join(dirname(file), name);
  const isThere = (name: string) => existsSync(beside(name)) && statSync(beside(name)).isFile();
  return {
    found: names.filter(isThere).map((name) => [name, readBytes(beside(name))] as const),
    notFound: names.filter((name) => !isThere(name)),
  };
}

const isEmptyFolder = (folder: string): boolean => {
  try {
    return readdirSync(folder).length === 0;
  } catch {
    return false;
  }
};

/** Writes files into a folder that is there whole or not at all. */
function writeFolder(folder: string, files: ReadonlyMap<string, Uint8Array | string>): void {
  const place = resolve(folder);
  if (!existsSync(dirname(place)))
    throw new UsageError(({ files }) => files.noFolder(folder, dirname(place)));
  const part = join(dirname(place), `.${basename(place)}.${process.pid}.part`);
  try {
    mkdirSync(part);
    for (const [name, content] of files) {
      mkdirSync(dirname(join(part, name)), { recursive: true });
      writeWhole(join(part, name), content);
    }
    if (existsSync(place)) rmdirSync(place);
    renameSync(part, place);
  } catch (error) {
    rmSync(part, { recursive: true, force: true });
    if (error instanceof UsageError) throw error;
    throw new UsageError(({ files }) => files.unwritable(folder, (error as Error).message));
  }
}

/** What was made, in words. */
export function handoverWords(folder: string, { manifest, content }: HandedOver): string {
  const text = commandLineFor("en").handover;
  const { files, fingerprint, final, notFound } = manifest;
  const stops = content.findings.filter((one) => one.weight === "stop" && !one.concession).length;
  return [
    text.made(folder, files.length + 1, fingerprint),
    ...(final ? [] : [text.notFinal(stops)]),
    ...(notFound.length > 0 ? [text.notFound(notFound)] : []),
  ].join("\n");
}
