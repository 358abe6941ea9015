import { availableParallelism } from "node:os";
import { setImmediate } from "node:timers/promises";
import { Worker } from "node:worker_threads";
import type { Checked, Job } from "./checkJob";
import { jobQueue, workOff } from "./jobQueue";

/** Fewer workbooks than this are checked here alone: a worker costs its start. */
const FEW = 4;

/**
 * Checks workbooks, with a thread for each core where there are many. This thread is one of them and
 * begins at once, while the others are still loading the check.
 *
 * @param done told of each, in the order in which they are done
 * @returns in the order in which they were given
 */
export async function runJobs(
  jobs: readonly Job[],
  done: (checked: Checked) => void,
  cores = availableParallelism(),
): Promise<Checked[]> {
  const answers: Checked[] = [];
  const queue = jobQueue(jobs);
  const workers = Array.from(
    { length: jobs.length < FEW ? 0 : Math.min(cores, jobs.length) - 1 },
    () => new Worker(new URL("./checkWorker.mjs", import.meta.url), { workerData: queue }),
  );
  let open = jobs.length;
  let finish = () => {};
  const settle = (at: number, checked: Checked) => {
    answers[at] = checked;
    done(checked);
    if (--open === 0) finish();
  };
  const elsewhere = new Promise<void>((finished, failed) => {
    finish = finished;
    for (const worker of workers)
      worker.on("error", failed).on("message", ({ at, checked }) => settle(at, checked));
    if (open === 0) finish();
  });
  // The others' answers are heard between two workbooks.
  const here = workOff(queue, (at, checked) => {
    settle(at, checked);
    return setImmediate();
  });
  try {
    await Promise.all([here, elsewhere]);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return answers;
}
