import { parentPort } from "node:worker_threads";
import { type Checked, type Job, runJob } from "./checkJob";

/** One of the workers of a folder: a job at a time, until there is none. */
parentPort?.on("message", async (job: Job) => {
  const done: Checked = await runJob(job);
  parentPort?.postMessage(done);
});
