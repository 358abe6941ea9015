import { existsSync } from "node:fs";
import { join, relative } from "node:path";
import { changedSince } from "../handover/compareContent";
import { type Content, RECORDS_FORMAT } from "../handover/content";
import { fingerprintOf, sha256 } from "../handover/fingerprint";
import {
  isSealed,
  MANIFEST,
  type Manifest,
  manifestSchema,
  RECORDS,
  SIGNATURE,
  WORKBOOK,
} from "../handover/manifest";
import { isSignedBy } from "../handover/signature";
import { openBook } from "../intake/openBook";
import { commandLineFor } from "../messages/commandLine";
import { daySerial } from "../quantities/dates";
import { checkOpened } from "./checkFile";
import { readBytes, readText, UsageError, usageError } from "./files";
import { filesBelow } from "./filesBelow";
import { openBookAs } from "./openBookAs";

export interface Verified {
  readonly manifest: Manifest;
  /** What is not as it was handed over, a line each. */
  readonly changes: readonly string[];
  /** What is known of who signed it, in a sentence; undefined where it is not signed. */
  readonly signature?: string;
}

/**
 * Compares a folder that was handed over with its manifest; where the workbook or the records were changed,
 * names the cells and the facts of the lineup.
 *
 * @param key a file with the public key of the firm that signed it
 * @throws {UsageError} where the folder has no manifest that can be read
 */
export async function verify(folder: string, key?: string): Promise<Verified> {
  const manifest = readManifest(folder);
  const text = commandLineFor("en").verify;
  const changes: string[] = (await isSealed(manifest)) ? [] : [text.seal(MANIFEST)];
  const { wrong, signature } = await signedIn(folder, key);
  if (wrong !== undefined) changes.push(wrong);
  for (const { name, sha256: told } of manifest.files) {
    const file = join(folder, name);
    if (!existsSync(file)) changes.push(text.lost(name));
    else if ((await sha256(readBytes(file))) !== told) changes.push(text.altered(name));
  }
  const listed = new Set([...manifest.files.map(({ name }) => name), MANIFEST, SIGNATURE]);
  for (const name of filesIn(folder)) if (!listed.has(name)) changes.push(text.added(name));
  const content = readContent(folder);
  if (typeof content === "string") changes.push(text.unreadable(RECORDS, content));
  else {
    const found = await fingerprintOf(content);
    if (found !== manifest.fingerprint) changes.push(text.fingerprint(manifest.fingerprint, found));
    changes.push(...(await changedCells(folder, content)));
  }
  return { manifest, changes, ...(signature === undefined ? {} : { signature }) };
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
  if (!found.ok) throw new UsageError(({ verify }) => verify.noKey(key, found.reason));
  return found.value ? { signature: text.signed } : { wrong: text.badSignature(SIGNATURE) };
}

/** What the workbook and the records in a folder do not agree in. */
async function changedCells(folder: string, content: Content): Promise<string[]> {
  const text = commandLineFor("en").verify;
  const file = join(folder, WORKBOOK);
  if (!existsSync(file)) return [];
  try {
    const { snapshot } = await openBookAs(file, {});
    const report = checkOpened(file, openBook(snapshot), daySerial(content.checked), true);
    return changedSince(content, report.context).map(({ place, what, was, is }) =>
      text.changed(WORKBOOK, place, what, was, is),
    );
  } catch (error) {
    return [text.unreadable(WORKBOOK, usageError(error).message)];
  }
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
  const file = join(folder, RECORDS);
  if (!existsSync(file)) return "missing";
  const read = jsonOf(readText(file)) as Content | undefined;
  return read?.format === RECORDS_FORMAT && Array.isArray(read.rows) && read.lineup
    ? read
    : `not of the form ${RECORDS_FORMAT}`;
}

/** Names of all files in a folder and the folders in it. */
const filesIn = (folder: string): string[] =>
  filesBelow(folder).map((file) => relative(folder, file).replaceAll("\\", "/"));

/** What was found, in words. */
export function verifyWords({ manifest, changes, signature }: Verified): string {
  const text = commandLineFor("en").verify;
  return [
    ...(changes.length === 0 ? [text.same(manifest.files.length, manifest.fingerprint)] : changes),
    ...(signature === undefined ? [] : [signature]),
  ].join("\n");
}
