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
import type { HandedOver } from "../handover/makeHandover";
import { MANIFEST, otherThanNoted, SIGNATURE, type Step } from "../handover/manifest";
import { signatureOf } from "../handover/signature";
import { openBook } from "../intake/openBook";
import type { Paper } from "../look/page";
import { commandLineFor } from "../messages/commandLine";
import { messagesFor } from "../messages/messages";
import { today } from "../quantities/today";
import { named, readBytes, readText, UsageError, writeWhole } from "./files/files";
import { checkOpened } from "./jobs/checkFile";
import { openBookAs } from "./openBookAs";

export interface HandoverOptions {
  readonly paper?: Extract<Paper, "a4" | "letter">;
  /** A file with the firm's private Ed25519 key (PKCS #8, PEM), by which the manifest is signed. */
  readonly sign?: string;
  /** Told before each file is made. */
  readonly step?: (file: Step) => void;
}

/**
 * Makes the hand-over of a workbook. The folder is made beside its place and renamed into it, so that it is
 * there whole or not at all.
 *
 * @throws {UsageError} where the folder holds something, or the workbook cannot be checked
 */
export async function handOver(
  file: string,
  folder: string,
  { paper, sign, step }: HandoverOptions = {},
): Promise<HandedOver> {
  if (existsSync(folder) && !isEmptyFolder(folder))
    throw new UsageError(({ handover }) => handover.notEmpty(folder));
  const key = sign === undefined ? undefined : readText(sign);
  const { bytes, snapshot } = await openBookAs(file, {});
  const report = checkOpened(file, openBook(snapshot), today(), true);
  // The PDF library and React load only when a report is made.
  const [{ makeHandover }, { writePdf }] = await Promise.all([
    import("../handover/makeHandover"),
    import("./writePdf"),
  ]);
  const made = await named(file, () =>
    makeHandover({
      report,
      book: { bytes, name: basename(file) },
      messages: messagesFor("en"),
      paper,
      beside: besideOf(file),
      writePdf,
      step,
    }),
  );
  const files = new Map(made.files);
  if (key !== undefined) {
    const signature = await signatureOf(files.get(MANIFEST) ?? new Uint8Array(), key);
    if (!signature.ok)
      throw new UsageError(({ handover, told }) => handover.noKey(sign ?? "", signature.say(told)));
    files.set(SIGNATURE, signature.value);
  }
  writeFolder(folder, files);
  return { ...made, files };
}

/** The files that stand beside a workbook, by name. */
const besideOf = (file: string) => (name: string) => {
  const there = join(dirname(file), name);
  return existsSync(there) && statSync(there).isFile() ? readBytes(there) : undefined;
};

const isEmptyFolder = (folder: string): boolean => {
  try {
    return readdirSync(folder).length === 0;
  } catch {
    return false;
  }
};

/** Writes files into a folder that is there whole or not at all. */
function writeFolder(folder: string, files: ReadonlyMap<string, Uint8Array>): void {
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
export function handoverWords(
  folder: string,
  { manifest, content, files: made }: HandedOver,
): string {
  const text = commandLineFor("en").handover;
  const { fingerprint, final, notFound } = manifest;
  const stops = content.findings.filter((one) => one.weight === "stop" && !one.concession).length;
  return [
    text.made(folder, made.size, fingerprint),
    ...(final ? [] : [text.notFinal(stops)]),
    ...(notFound.length > 0 ? [text.notFound(notFound)] : []),
    ...otherThanNoted(manifest).map(text.notAsNoted),
  ].join("\n");
}
