import { parentPort, workerData } from "node:worker_threads";
import { buffersOf } from "../workbook/grid";
import { type Part, readPart } from "../workbook/readPart";

/** One of the readers of a workbook: reads the parts that it is asked for. */
parentPort?.on("message", async (part: Part) => {
  const sheets = await readPart(workerData as Uint8Array, part);
  const buffers = sheets.flatMap(({ cells, formulas }) =>
    [cells, formulas.written].flatMap(buffersOf),
  );
  parentPort?.postMessage(sheets, buffers);
});
