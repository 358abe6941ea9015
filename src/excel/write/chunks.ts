/**
 * Excel on the web refuses requests and answers of more than 5 MB. Batches are filled up to this many
 * bytes, so that none comes near.
 */
export const BATCH_BYTES = 3_300_000;

/** Excel on the web refuses to read more than 5,000,000 cells at once; two readings of each are asked for. */
export const BATCH_CELLS = 2_000_000;

export interface Watched {
  /** Told after every batch how much of the work is done. */
  readonly progress?: (done: number, total: number) => void;
  /** Stops the work between two batches. */
  readonly signal?: AbortSignal;
  /** Bytes that a batch is filled up to, where that is to be less than Excel takes. */
  readonly most?: number;
}

/** One piece of work that must go to Excel as a whole. */
export interface Step {
  /** About how many bytes it adds to the request. */
  readonly bytes: number;
  readonly queue: () => void;
}

const encoder = new TextEncoder();

/** UTF-8 bytes of a value as it is sent. */
export const sentBytes = (value: unknown): number => encoder.encode(JSON.stringify(value)).length;

/** About what one object and the actions on it take in a request, besides what is written. */
export const OBJECT_BYTES = 600;

/** Steps in their order, as many to a batch as fit; a step bigger than that stands alone. */
export function packed<T extends { readonly bytes: number }>(
  steps: readonly T[],
  most: number = BATCH_BYTES,
): T[][] {
  const batches: T[][] = [];
  let room = 0;
  for (const step of steps) {
    if (step.bytes > room || batches.length === 0) {
      batches.push([]);
      room = most;
    }
    batches.at(-1)?.push(step);
    room -= step.bytes;
  }
  return batches;
}

/** Sends steps to Excel in their order, in as few batches as their bytes allow; it calculates after each. */
export async function inBatches(
  context: Excel.RequestContext,
  steps: readonly Step[],
  { progress, signal, most }: Watched,
): Promise<void> {
  let done = 0;
  for (const batch of packed(steps, most)) {
    signal?.throwIfAborted();
    context.application.suspendApiCalculationUntilNextSync();
    for (const { queue } of batch) queue();
    await context.sync();
    done += batch.length;
    progress?.(done, steps.length);
  }
}

/** Rows cut into runs of at most so many bytes each. */
export function rowChunks<T>(rows: readonly T[], most: number = BATCH_BYTES): T[][] {
  return packed(
    rows.map((row) => ({ row, bytes: sentBytes(row) + 1 })),
    most,
  ).map((chunk) => chunk.map(({ row }) => row));
}
