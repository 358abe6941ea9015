import { parentPort, workerData } from "node:worker_threads";
import { fileSheetReader } from "../xlsx/readPart";
import { buffersOf } from "../xlsx/scan/grid";
import { type Queue, workOff } from "./files/queue";

/** What a reader of a workbook is given. */
export interface Reading {
  readonly file: Uint8Array;
  /** Numbers of sheets. */
  readonly queue: Queue<number>;
}

/** One of the readers of a workbook. */
const { file, queue } = workerData as Reading;
const read = fileSheetReader(file);
await workOff(queue, async (number, at) => {
  const sheet = await read(number);
  parentPort?.postMessage({ at, sheet }, buffersOf(sheet.cells));
});
