import { statSync } from "node:fs";
import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { runJob } from "./checkJob";
import { UsageError } from "./files";
import type { Checked, Job } from "./job";
import { queueOf, workOff } from "./queue";
import { isOutOfRoom, roomOf } from "./room";

/** Workbooks of fewer bytes together are checked here alone: a worker costs its start. */
const LITTLE = 1_000_000;

/**
 * Checks workbooks, in a worker for each core where there is much to do; where there are fewer long
 * workbooks than cores, the others help to read them.
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
  const count = bytesOf(jobs) < LITTLE ? 0 : Math.min(cores, jobs.length);
  const spare = count === 0 ? 0 : Math.floor(cores / count) - 1;
  const queue = queueOf(jobs.map((job) => ({ ...job, spare })));
  const workers = Array.from(
    { length: count },
    () =>
      new Worker(new URL("./checkWorker.mjs", import.meta.url), {
        workerData: queue,
        resourceLimits: roomOf(count),
      }),
  );
  let open = jobs.length;
  let finish = () => {};
  const applyConcessions = (at: number, checked: Checked) => {
    answers[at] = checked;
    done(checked);
    if (--open === 0) finish();
  };
  const elsewhere = new Promise<void>((finished, failed) => {
    finish = finished;
    for (const worker of workers)
      worker
        .on("error", (error) => failed(tooLarge(error)))
        .on("message", ({ at, checked }) => applyConcessions(at, checked));
    if (open === 0) finish();
  });
  const here =
    count === 0
      ? workOff(queue, async (job, at) => applyConcessions(at, await runJob(job)))
      : undefined;
  try {
    await Promise.all([here, elsewhere]);
  } finally {
    await Promise.all(workers.map((worker) => worker.terminate()));
  }
  return answers;
}

const tooLarge = (error: Error): Error =>
  isOutOfRoom(error) ? new UsageError(({ files }) => files.memoryOfAll) : error;

const bytesOf = (jobs: readonly Job[]) =>
  jobs.reduce((sum, { book }) => sum + (statSync(book, { throwIfNoEntry: false })?.size ?? 0), 0);
