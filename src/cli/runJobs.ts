import { availableParallelism } from "node:os";
import { Worker } from "node:worker_threads";
import { type Checked, type Job, runJob } from "./checkJob";

/** Fewer workbooks than this are checked here: a worker costs its start. */
const FEW = 4;

/**
 * Checks workbooks, with a worker for each core where there are many.
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
  const settle = (at: number, checked: Checked) => {
    answers[at] = checked;
    done(checked);
  };
  if (jobs.length < FEW || cores < 2) {
    for (const [at, job] of jobs.entries()) settle(at, await runJob(job));
    return answers;
  }
  const waiting = jobs.keys();
  await Promise.all(
    Array.from(
      { length: Math.min(cores, jobs.length) },
      () =>
        new Promise<void>((finished, failed) => {
          const worker = new Worker(new URL("./checkWorker.mjs", import.meta.url));
          let at = -1;
          const next = () => {
            const { value, done: empty } = waiting.next();
            if (empty) {
              worker.terminate().then(() => finished(), failed);
              return;
            }
            at = value;
            worker.postMessage(jobs[at]);
          };
          worker.on("error", failed);
          worker.on("message", (checked: Checked) => {
            settle(at, checked);
            next();
          });
          next();
        }),
    ),
  );
  return answers;
}
