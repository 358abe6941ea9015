import { parentPort, workerData } from "node:worker_threads";
import { type Queue, workOff } from "./files/queue";
import { runJob } from "./jobs/checkJob";
import type { Job } from "./jobs/job";
import type { WorkerSaid } from "./runJobs";

const say = (said: WorkerSaid) => parentPort?.postMessage(said);

/** One of the workers of a folder. */
await workOff(workerData as Queue<Job>, async (job, at) => {
  say({ at });
  say({ at, checked: await runJob(job) });
});
