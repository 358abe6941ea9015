import type { TDocumentDefinitions } from "pdfmake/interfaces";
import type { Report } from "../check/check";
import { punchList } from "../check/punch/punchList";
import { punchChanges } from "../check/punch/punchWrites";
import type { Paper } from "../look/page";
import type { Messages } from "../messages/messages";
import { punchSheet } from "../sheets/ours/punchSheet";
import { writesOf } from "../sheets/plan/appended";
import { papersOf } from "../sheets/plan/plannedSheet";
import { draftSheet } from "../xlsx/draftSheet";
import { freezeBook } from "../xlsx/freezeBook";
import { BookEdit } from "../xlsx/patch/bookEdit";
import { newBook } from "../xlsx/write/newBook";
import { type Content, contentOf, isFinal } from "./content";
import { exportsOf, isPlain } from "./exportsOf";
import { filesNamed } from "./filesNamed";
import { fingerprintOf, sha256 } from "./fingerprint";
import { frozenWrites } from "./frozenWrites";
import {
  EXPORTS,
  MANIFEST,
  type Manifest,
  PUNCH_LIST,
  RECORDS,
  REPORT,
  type Step,
  sealed,
  TABLE,
  WORKBOOK,
} from "./manifest";
import { recordsCsv } from "./recordsCsv";
import { reportPages } from "./reportPages";

/** What a hand-over is made from, and what only a host can do. */
export interface HandoverOf {
  /** The check for hand-over. */
  readonly report: Report;
  /** The workbook as it stands, and its name. */
  readonly book: { readonly bytes: Uint8Array; readonly name: string };
  readonly messages: Messages;
  readonly paper?: Extract<Paper, "a4" | "letter">;
  /** A file that the workbook names; undefined where the host does not have it. */
  readonly beside: (name: string) => Uint8Array | undefined;
  readonly writePdf: (pages: TDocumentDefinitions) => Promise<Uint8Array>;
  /** Told before each file of which a person waits; the work goes on once it is answered. */
  readonly step?: (file: Step) => void | Promise<void>;
}

/** What is handed over. */
export interface HandedOver {
  readonly manifest: Manifest;
  readonly content: Content;
  /** By name within the folder. */
  readonly files: ReadonlyMap<string, Uint8Array>;
}

const ATTACHED = "attachments";

/**
 * Makes the files of a hand-over: report, frozen workbook, punch list, records as data, the exports and
 * papers that the workbook names and the host finds, and a manifest.
 *
 * @throws {BookError} where the workbook's package cannot be worked on
 */
export async function makeHandover({
  report,
  book,
  messages,
  paper,
  beside,
  writePdf,
  step = () => {},
}: HandoverOf): Promise<HandedOver> {
  const content: Content = JSON.parse(JSON.stringify(contentOf(report)));
  const fingerprint = await fingerprintOf(content);
  const files = new Map<string, Uint8Array>();
  const put = (name: string, text: string) => files.set(name, new TextEncoder().encode(text));
  put(RECORDS, `${JSON.stringify(content, null, 1)}\n`);
  put(TABLE, recordsCsv(content.rows));
  await step(WORKBOOK);
  const punch = punchChanges(report).change ?? [];
  const frozen = [...frozenWrites(report.context), ...punch];
  files.set(WORKBOOK, await freezeBook(book.bytes, frozen));
  await step(PUNCH_LIST);
  files.set(PUNCH_LIST, punchBook(report, messages));
  await step(REPORT);
  files.set(REPORT, await writePdf(reportPages({ content, report, fingerprint, paper }, messages)));
  await step(MANIFEST);
  const exported = exportsOf(report.context.book);
  const attached = filesNamed(content).filter((name) => !exported.includes(name));
  const notFound: string[] = [];
  for (const [folder, names] of [
    [EXPORTS, exported],
    [ATTACHED, attached],
  ] as const)
    for (const name of names) {
      const bytes = isPlain(name) ? beside(name) : undefined;
      if (bytes) files.set(`${folder}/${name}`, bytes);
      else notFound.push(name);
    }
  const noted = Object.entries(report.context.book.remembered.noted ?? {}).filter(([name]) =>
    exported.includes(name),
  );
  const manifest = await sealed({
    format: "gearproof-handover-2",
    project: content.lineup.project.name,
    made: content.checked,
    final: isFinal(content),
    from: book.name,
    fingerprint,
    files: await Promise.all([...files].map(([name, bytes]) => listed(name, bytes))),
    notFound,
    ...(noted.length > 0 ? { noted: Object.fromEntries(noted) } : {}),
  });
  put(MANIFEST, `${JSON.stringify(manifest, null, 1)}\n`);
  return { manifest, content, files };
}

/** The punch list as a workbook of its own. */
function punchBook(report: Report, { handover }: Messages): Uint8Array {
  const items = punchList(report).map(({ cells }) => cells);
  const sheet = punchSheet(items, papersOf(report.context.lineup));
  const list = new BookEdit(newBook(handover.punch));
  list.addSheet(draftSheet(sheet, writesOf(sheet)));
  return list.save();
}

const listed = async (name: string, bytes: Uint8Array) => ({
  name,
  bytes: bytes.length,
  sha256: await sha256(bytes),
});
