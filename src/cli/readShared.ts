import { once } from "node:events";
import { Worker } from "node:worker_threads";
import type { Snapshot } from "../sheets/snapshot";
import { BookError } from "../workbook/bookError";
import { readBook } from "../workbook/file";
import { type PartReader, readPart } from "../workbook/readPart";
import { isOutOfRoom, roomOf } from "./room";

/** A further thread pays from so many bytes of a workbook on: it costs its start. */
const EACH = 4_000_000;

/**
 * Reads a workbook; a long one together with as many further threads as there are cores to spare.
 *
 * @throws {BookError} as `readBook`
 */
export async function readShared(file: Uint8Array, spare: number): Promise<Snapshot> {
  const count = Math.min(spare, Math.floor(file.length / EACH));
  if (count < 1) return readBook(file);
  const workers = Array.from(
    { length: count },
    () =>
      new Worker(new URL("./readWorker.mjs", import.meta.url), {
        workerData: file,
        resourceLimits: roomOf(1),
      }),
  );
  try {
    return await readBook(file, [readPart, ...workers.map(readerBy)]);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
}

const readerBy =
  (worker: Worker): PartReader =>
  async (_file, part) => {
    worker.postMessage(part);
    try {
      const [sheets] = await once(worker, "message");
      return sheets;
    } catch (error) {
      throw isOutOfRoom(error)
        ? new BookError("needs more memory than this machine gives; read it on a larger machine")
        : error;
    }
  };
