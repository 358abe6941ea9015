import { vi } from "vitest";

/**
 * How many sequences of steps are run: a thousand in `npm test`, always the same ones;
 * `npm run fuzz:flows` runs a hundred thousand, others each time.
 */
const ALL = Number(process.env.FLOWS ?? 1000);

/** A share of the sequences, and the seed that they are made from. */
export const runsOf = (share: number) => ({
  runs: Math.ceil(ALL * share),
  ...(process.env.FLOWS ? {} : { seed: 19 }),
});

/** What is put back waits between its tries; here it tries again at once. */
export function withoutWaiting(): void {
  const wait = globalThis.setTimeout;
  vi.stubGlobal("setTimeout", (work: () => void, ms = 0) =>
    wait(work, ms >= 100 && ms <= 1500 ? 0 : ms),
  );
}

/** Long enough for a hundred thousand. */
export const HOURS = 12 * 3_600_000;
