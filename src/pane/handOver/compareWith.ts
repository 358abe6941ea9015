import { unzipSync } from "fflate";
import { type Content, contentIn } from "../../handover/content";
import { fingerprintOf } from "../../handover/fingerprint";
import { RECORDS } from "../../handover/manifest";

/** A hand-over that the open workbook is compared with. */
export interface HandedBefore {
  readonly content: Content;
  /** As it comes out of the records that are there, whatever a manifest says. */
  readonly fingerprint: string;
}

/**
 * The records of a hand-over: of its `records.json`, or of the whole archive.
 *
 * @returns undefined where the file holds none
 */
export async function handedBefore(file: Uint8Array): Promise<HandedBefore | undefined> {
  const content = contentIn(new TextDecoder().decode(recordsIn(file)));
  return content && { content, fingerprint: await fingerprintOf(content) };
}

/** `records.json` of an archive; any other file as it is. */
function recordsIn(file: Uint8Array): Uint8Array | undefined {
  const isArchive = file[0] === 0x50 && file[1] === 0x4b;
  if (!isArchive) return file;
  try {
    const isRecords = ({ name }: { name: string }) => name.split("/").at(-1) === RECORDS;
    return Object.values(unzipSync(file, { filter: isRecords }))[0];
  } catch {
    return undefined;
  }
}
