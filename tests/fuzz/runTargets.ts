import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { changed, type Mutation, mutation } from "./mutate";
import { TARGETS, type Target } from "./targets";

/** Files of all sorts in one run, always the same; `npm run fuzz:input` tries a hundred thousand others each time. */
const RUNS = Number(process.env.FUZZ ?? 20_000);
const SEED = process.env.FUZZ ? undefined : 19;

/** Milliseconds of the processor that one file may take. */
const SLOW = 5_000;
const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

/** Files that were found to end badly, each in the folder of its target. */
const CORPUS = "tests/fuzz/corpus";

const fileOf = ({ bases, mutate }: Target, given: Mutation): Uint8Array =>
  mutate?.(given) ?? changed(bases[given.base] as Uint8Array, given.changes);

/** Holds targets to it that whatever they are given ends soon in an outcome or a message. */
export function runTargets(names: readonly (keyof typeof TARGETS)[]): void {
  test.each(names)(
    "%s, its bytes changed, ends soon in an outcome or a message",
    async (name) => {
      const target = TARGETS[name];
      await fc.assert(
        fc.asyncProperty(mutation(target.bases.length), async (given) => {
          const file = fileOf(target, given);
          const before = processor();
          await target.given(file, given.base);
          expect(processor() - before).toBeLessThan(SLOW);
        }),
        { numRuns: Math.ceil(RUNS * target.share), seed: SEED },
      );
    },
    12 * 3_600_000,
  );

  test.each(names)("%s: what was found before", async (name) => {
    const folder = join(CORPUS, name.replaceAll(/\W+/g, "-"));
    const files = readdirSync(folder);
    expect(files.length).toBeGreaterThan(0);
    for (const file of files) await TARGETS[name].given(readFileSync(join(folder, file)));
  });
}
