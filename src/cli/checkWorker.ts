import { parentPort, workerData } from "node:worker_threads";
import { runJob } from "./checkJob";
import type { Job } from "./job";
import { type Queue, workOff } from "./queue";

/** One of the workers of a folder. */
await workOff(workerData as Queue<Job>, async (job, at) =>
  parentPort?.postMessage({ at, checked: await runJob(job) }),
);
