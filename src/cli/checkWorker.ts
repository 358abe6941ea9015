import { parentPort, workerData } from "node:worker_threads";
import { type JobQueue, workOff } from "./jobQueue";

/** One of the workers of a folder. */
await workOff(workerData as JobQueue, (at, checked) => parentPort?.postMessage({ at, checked }));
