/** Things to do that several threads work off together: whoever is free takes the next. */
export interface Queue<T> {
  readonly items: readonly T[];
  /** How many are taken, in memory that the threads share. */
  readonly taken: Int32Array;
}

export const queueOf = <T>(items: readonly T[]): Queue<T> => ({
  items,
  taken: new Int32Array(new SharedArrayBuffer(Int32Array.BYTES_PER_ELEMENT)),
});

/** Takes one after the other and does it until there is none left. */
export async function workOff<T>(
  { items, taken }: Queue<T>,
  work: (item: T, at: number) => Promise<void>,
): Promise<void> {
  for (;;) {
    const at = Atomics.add(taken, 0, 1);
    const item = items[at];
    if (item === undefined) return;
    await work(item, at);
  }
}

/** Leaves the rest undone: no thread takes any more. */
export const drop = ({ items, taken }: Queue<unknown>): void => {
  Atomics.store(taken, 0, items.length);
};
