import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import type { Report } from "../check/check";
import { changedSince } from "../handover/compareContent";
import { compareExport, isKnown } from "../handover/compareExports";
import { type Content, contentIn, RECORDS_FORMAT } from "../handover/content";
import { fingerprintOf, sha256 } from "../handover/fingerprint";
import {
  EXPORTS,
  isSealed,
  MANIFEST,
  type Manifest,
  manifestSchema,
  otherThanNoted,
  RECORDS,
  SIGNATURE,
  WORKBOOK,
} from "../handover/manifest";
import { isSignedBy } from "../handover/signature";
import { openBook } from "../intake/openBook";
import { commandLineFor } from "../messages/commandLine";
import { daySerial } from "../quantities/dates";
import { readBytes, readText, UsageError, usageError } from "./files/files";
import { filesBelow } from "./files/filesBelow";
import { checkOpened } from "./jobs/checkFile";
import { openBookAs } from "./openBookAs";

export interface Verified {
  readonly manifest: Manifest;
  /** What is not as it was handed over, a line each. */
  readonly changes: readonly string[];
  /** What is known of who signed it, in a sentence; undefined where it is not signed. */
  readonly signature?: string;
  /** What does not concern the time since: readings that were otherwise than their export from the start, and those that could not be compared. */
  readonly notes: readonly string[];
}

/**
 * Compares a folder that was handed over with its manifest; where the workbook or the records were changed,
 * names the cells and the facts of the lineup. The readings of the workbook are compared again with the
 * exports that were kept.
 *
 * @param key a file with the public key of the firm that signed it
 * @throws {UsageError} where the folder has no manifest that can be read
 */
export async function verify(folder: string, key?: string): Promise<Verified> {
  const manifest = readManifest(folder);
  const text = commandLineFor("en").verify;
  const { wrong, signature } = await signedIn(folder, key);
  const said = await contentChanges(folder, manifest);
  return {
    manifest,
    changes: [
      ...((await isSealed(manifest)) ? [] : [text.seal(MANIFEST)]),
      ...(wrong === undefined ? [] : [wrong]),
      ...(await fileChanges(folder, manifest)),
      ...said.changes,
    ],
    notes: [
      ...otherThanNoted(manifest).map(commandLineFor("en").handover.notAsNoted),
      ...said.notes,
    ],
    ...(signature === undefined ? {} : { signature }),
  };
}

/** Files that are lost, other than they were, or not of the hand-over. */
async function fileChanges(folder: string, { files }: Manifest): Promise<string[]> {
  const text = commandLineFor("en").verify;
  const changes: string[] = [];
  for (const { name, sha256: told } of files) {
    const file = join(folder, name);
    if (!existsSync(file)) changes.push(text.lost(name));
    else if ((await sha256(readBytes(file))) !== told) changes.push(text.altered(name));
  }
  const listed = new Set([...files.map(({ name }) => name), MANIFEST, SIGNATURE]);
  const added = filesIn(folder).filter((name) => !listed.has(name));
  return [...changes, ...added.map(text.added)];
}

type Said = Pick<Verified, "changes" | "notes">;

/** What is said otherwise: in the records, in the workbook against these, and in the exports against the workbook. */
async function contentChanges(folder: string, manifest: Manifest): Promise<Said> {
  const text = commandLineFor("en").verify;
  const content = readContent(folder);
  if (typeof content === "string")
    return { changes: [text.unreadable(RECORDS, content)], notes: [] };
  const found = await fingerprintOf(content);
  const changes =
    found === manifest.fingerprint ? [] : [text.fingerprint(manifest.fingerprint, found)];
  const report = await checkAgain(folder, content);
  if (report === undefined) return { changes, notes: [] };
  if (typeof report === "string") return { changes: [...changes, report], notes: [] };
  const beside = besideExports(folder, manifest, content, report);
  return {
    changes: [...changes, ...changedCells(content, report), ...beside.changes],
    notes: beside.notes,
  };
}

/** Whether the manifest is signed by the owner of a key: what is wrong, or what is known. */
async function signedIn(
  folder: string,
  key: string | undefined,
): Promise<{ readonly wrong?: string; readonly signature?: string }> {
  const text = commandLineFor("en").verify;
  const file = join(folder, SIGNATURE);
  const isThere = existsSync(file);
  if (key === undefined) return isThere ? { signature: text.unchecked } : {};
  if (!isThere) return { wrong: text.notSigned(SIGNATURE) };
  const found = await isSignedBy(readBytes(join(folder, MANIFEST)), readBytes(file), readText(key));
  if (!found.ok) throw new UsageError(({ verify, told }) => verify.noKey(key, found.say(told)));
  return found.value ? { signature: text.signed } : { wrong: text.badSignature(SIGNATURE) };
}

/** The workbook of a folder, checked as on the day of the hand-over; else why it cannot be, or undefined where it is lost. */
async function checkAgain(folder: string, content: Content): Promise<Report | string | undefined> {
  const file = join(folder, WORKBOOK);
  if (!existsSync(file)) return undefined;
  try {
    const { snapshot } = await openBookAs(file, {});
    return checkOpened(file, openBook(snapshot), daySerial(content.checked), true);
  } catch (error) {
    return commandLineFor("en").verify.unreadable(WORKBOOK, usageError(error).message);
  }
}

/** What the workbook and the records in a folder do not agree in. */
const changedCells = (content: Content, { context }: Report): string[] =>
  changedSince(content, context).map(({ place, what, was, is }) =>
    commandLineFor("en").verify.changed(WORKBOOK, place, what, was, is),
  );

/** What the workbook and the exports in a folder do not agree in, and what could not be compared. */
function besideExports(
  folder: string,
  { files }: Manifest,
  content: Content,
  report: Report,
): Said {
  const text = commandLineFor("en").verify;
  const { book, today } = report.context;
  const changes: string[] = [];
  const notes: string[] = [];
  for (const { name: file } of files) {
    const at = join(folder, file);
    if (!file.startsWith(`${EXPORTS}/`) || !existsSync(at)) continue;
    const name = file.slice(EXPORTS.length + 1);
    const compared = compareExport(book, name, readBytes(at), today);
    for (const one of compared.unlike) {
      const cell = `${one.sheet}!${one.address} (${one.row}, "${one.column}")`;
      const words = one.isEarlier ? text.unlikeEarlier : text.unlike;
      const told = words(file, one.line, one.said, WORKBOOK, cell, one.held);
      if (isKnown(content, one)) notes.push(`${told}; ${text.known}`);
      else changes.push(told);
    }
    if (compared.notRead > 0) notes.push(text.notCompared(file, compared.notRead));
  }
  return { changes, notes };
}

function readManifest(folder: string): Manifest {
  const file = join(folder, MANIFEST);
  const refused = (why: string) =>
    new UsageError(({ handover }) => handover.noManifest(folder, why));
  if (!existsSync(file)) throw refused(`no ${MANIFEST}`);
  const read = manifestSchema.safeParse(jsonOf(readText(file)));
  if (!read.success) {
    const [issue] = read.error.issues;
    throw refused(`${MANIFEST}: ${issue?.path.join(".") || "JSON"}: ${issue?.message}`);
  }
  return read.data;
}

const jsonOf = (text: string): unknown => {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
};

/** The records of a folder; else why they cannot be read. */
function readContent(folder: string): Content | string {
  const { missing, otherForm } = commandLineFor("en").verify;
  const file = join(folder, RECORDS);
  if (!existsSync(file)) return missing;
  return contentIn(readText(file)) ?? otherForm(RECORDS_FORMAT);
}

/** Names of all files in a folder and the folders in it. */
const filesIn = (folder: string): string[] =>
  filesBelow(folder).map((file) => relative(folder, file).replaceAll("\\", "/"));

/** What was found, in words. */
export function verifyWords({ manifest, changes, notes, signature }: Verified): string {
  const text = commandLineFor("en").verify;
  return [
    ...(changes.length === 0 ? [text.same(manifest.files.length, manifest.fingerprint)] : changes),
    ...notes,
    ...(signature === undefined ? [] : [signature]),
  ].join("\n");
}
