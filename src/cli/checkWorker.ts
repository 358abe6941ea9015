import { parentPort, workerData } from "node:worker_threads";
import { type Job, runJob } from "./checkJob";
import { type Queue, workOff } from "./queue";

/** One of the workers of a folder. */
await workOff(workerData as Queue<Job>, async (job, at) =>
  parentPort?.postMessage({ at, checked: await runJob(job) }),
);
