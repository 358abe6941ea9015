import { zipSync } from "fflate";
import { check } from "../../check/check";
import type { BookFile } from "../../excel/bookFile";
import { type HandoverOf, makeHandover } from "../../handover/makeHandover";
import type { Manifest } from "../../handover/manifest";
import { openBook } from "../../intake/openBook";
import type { Messages } from "../../messages/messages";
import { BookError } from "../../sheets/bookError";
import { readBook } from "../../xlsx/readBook";

/** A hand-over as one file that a browser can save. */
export interface Folder {
  readonly zip: Uint8Array;
  /** Name of the folder, and of the file without its ending. */
  readonly name: string;
  readonly manifest: Manifest;
}

/**
 * Makes the hand-over of a workbook's file: what the command line writes into a folder, in an archive.
 *
 * @param besides exports, photos and papers that go with it, by name
 * @param today the day of the check for hand-over, as a serial day number
 * @throws {BookError} where the workbook cannot be read or checked
 */
export async function makeFolder(
  book: BookFile,
  besides: ReadonlyMap<string, Uint8Array>,
  today: number,
  messages: Messages,
  { writePdf, step }: Pick<HandoverOf, "writePdf" | "step">,
): Promise<Folder> {
  const opened = openBook(await readBook(book.bytes));
  const checked = check(opened, today, messages.findings, true);
  if (!checked.ok) throw new BookError(() => checked.reason);
  const { files, manifest } = await makeHandover({
    report: checked.report,
    book,
    messages,
    beside: (name) => besides.get(name),
    writePdf,
    step,
  });
  const name = `${plainName(manifest.project)}-${manifest.made}`;
  const inFolder = [...files].map(([file, bytes]) => [`${name}/${file}`, bytes] as const);
  return { zip: zipSync(Object.fromEntries(inFolder)), name, manifest };
}

/** A project's name as a file may be called: letters, digits and hyphens. */
export const plainName = (project: string): string =>
  project
    .normalize("NFC")
    .replace(/[^\p{L}\p{N}]+/gu, "-")
    .replace(/^-+|-+$/g, "")
    .slice(0, 60) || "handover";
