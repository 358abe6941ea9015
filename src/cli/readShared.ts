import { Worker } from "node:worker_threads";
import { BookError } from "../sheets/bookError";
import type { Snapshot } from "../sheets/snapshot";
import { readBook } from "../xlsx/readBook";
import { type SheetsReader, sheetReader } from "../xlsx/readPart";
import type { StoredSheet } from "../xlsx/storedSheet";
import { drop, queueOf, workOff } from "./files/queue";
import { isOutOfRoom, roomOf } from "./files/room";
import type { Reading } from "./readWorker";

/** A further thread pays from so many bytes of a workbook on: it costs its start. */
const EACH = 4_000_000;

/**
 * Reads a workbook; a long one together with as many further threads as there are cores to spare.
 *
 * @throws {BookError} as `readBook`
 */
export async function readShared(file: Uint8Array, spare: number): Promise<Snapshot> {
  const threads = Math.min(spare, Math.floor(file.length / EACH));
  return readBook(file, threads < 1 ? undefined : readWith(threads));
}

/** Reads the sheets of a file here and in so many further threads. */
const readWith =
  (threads: number): SheetsReader =>
  async (file, book, sheets) => {
    const queue = queueOf(sheets);
    const read: StoredSheet[] = [];
    const workerData: Reading = { file, queue };
    const workers = Array.from(
      { length: threads },
      () =>
        new Worker(new URL("./readWorker.mjs", import.meta.url), {
          workerData,
          resourceLimits: roomOf(1),
        }),
    );
    const elsewhere = workers.map(
      (worker) =>
        new Promise<void>((finished, failed) => {
          worker
            .on("message", ({ at, sheet }) => {
              read[at] = sheet;
            })
            .on("error", (error) => failed(tooLarge(error)))
            .on("exit", () => finished());
        }),
    );
    try {
      const own = sheetReader(book);
      const here = workOff(queue, async (number, at) => {
        read[at] = await own(number);
      });
      await Promise.all([here, ...elsewhere]);
    } finally {
      drop(queue);
      await Promise.all(workers.map((worker) => worker.terminate()));
    }
    return read;
  };

const tooLarge = (error: Error): Error =>
  isOutOfRoom(error) ? new BookError(({ book }) => book.noMemory) : error;
