import { type Checked, type Job, runJob } from "./checkJob";

/** Jobs that several threads work off together: whoever is free takes the next. */
export interface JobQueue {
  readonly jobs: readonly Job[];
  /** How many are taken, in memory that the threads share. */
  readonly taken: Int32Array;
}

export const jobQueue = (jobs: readonly Job[]): JobQueue => ({
  jobs,
  taken: new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)),
});

/** Takes jobs and does them until there is none left. */
export async function workOff(
  { jobs, taken }: JobQueue,
  done: (at: number, checked: Checked) => void | Promise<void>,
): Promise<void> {
  for (;;) {
    const at = Atomics.add(taken, 0, 1);
    const job = jobs[at];
    if (!job) return;
    await done(at, await runJob(job));
  }
}
