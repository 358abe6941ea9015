import { statSync } from "node:fs";
import { availableParallelism } from "node:os";
import { type ResourceLimits, Worker } from "node:worker_threads";
import { UsageError, usageError } from "./files/files";
import { type Queue, queueOf, workOff } from "./files/queue";
import { isOutOfRoom, roomOf } from "./files/room";
import { failed, runJob } from "./jobs/checkJob";
import type { Checked, Job } from "./jobs/job";

/** Workbooks of fewer bytes together are checked here alone: a worker costs its start. */
const LITTLE = 1_000_000;

/** What a worker says: which job it took, and what that came to. */
export interface WorkerSaid {
  readonly at: number;
  readonly checked?: Checked;
}

type Answer = (at: number, checked: Checked) => void;

/**
 * Checks workbooks, in a worker for each core where there is much to do; where there are fewer long
 * workbooks than cores, the others help to read them.
 *
 * @param done told of each, in the order in which they are done
 * @param room of each worker, where there are so many
 * @returns in the order in which they were given
 */
export async function runJobs(
  jobs: readonly Job[],
  done: (checked: Checked) => void,
  cores = availableParallelism(),
  room = roomOf,
): Promise<Checked[]> {
  const answers: Checked[] = [];
  const count = bytesOf(jobs) < LITTLE ? 0 : Math.min(cores, jobs.length);
  const spare = count === 0 ? 0 : Math.floor(cores / count) - 1;
  const queue = queueOf(jobs.map((job) => ({ ...job, spare })));
  const answer: Answer = (at, checked) => {
    answers[at] = checked;
    done(checked);
  };
  if (count === 0) await workOff(queue, async (job, at) => answer(at, await runJob(job)));
  await Promise.all(Array.from({ length: count }, () => workThrough(queue, room(count), answer)));
  return answers;
}

/** One worker after the other, until no job is left: one that ends over a workbook costs that workbook alone. */
async function workThrough(queue: Queue<Job>, room: ResourceLimits, answer: Answer): Promise<void> {
  while (Atomics.load(queue.taken, 0) < queue.items.length) await runWorker(queue, room, answer);
}

const runWorker = (queue: Queue<Job>, room: ResourceLimits, answer: Answer): Promise<void> =>
  new Promise((finished, failedToStart) => {
    let inHand: number | undefined;
    const lose = (error: unknown) => {
      const job = inHand === undefined ? undefined : queue.items[inHand];
      if (inHand === undefined || !job) failedToStart(error);
      else answer(inHand, failed(job.book, lostTo(error, job.book)));
      inHand = undefined;
    };
    new Worker(new URL("./checkWorker.mjs", import.meta.url), {
      workerData: queue,
      resourceLimits: room,
    })
      .on("message", ({ at, checked }: WorkerSaid) => {
        inHand = checked ? undefined : at;
        if (checked) answer(at, checked);
      })
      .on("error", lose)
      .on("exit", () => {
        if (inHand !== undefined) lose(new Error("its thread ended"));
        finished();
      });
  });

const lostTo = (error: unknown, book: string): UsageError =>
  isOutOfRoom(error)
    ? new UsageError(({ files }) => `${book}: ${files.memory}`)
    : usageError(error, book);

const bytesOf = (jobs: readonly Job[]) =>
  jobs.reduce((sum, { book }) => sum + (statSync(book, { throwIfNoEntry: false })?.size ?? 0), 0);
