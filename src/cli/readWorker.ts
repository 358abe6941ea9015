import "./unpackAtOnce";
import { parentPort, workerData } from "node:worker_threads";
import { buffersOf } from "../xlsx/grid";
import { readPart, type SheetsPart } from "../xlsx/readPart";
import { type Queue, workOff } from "./queue";

/** What a reader of a workbook is given. */
export interface Reading {
  readonly file: Uint8Array;
  readonly queue: Queue<SheetsPart>;
}

/** One of the readers of a workbook. */
const { file, queue } = workerData as Reading;
await workOff(queue, async (part, at) => {
  const sheets = await readPart(file, part);
  const buffers = sheets.flatMap(({ cells, formulas }) =>
    [cells, formulas.written].flatMap(buffersOf),
  );
  parentPort?.postMessage({ at, sheets }, buffers);
});
