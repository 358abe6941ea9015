import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import fc from "fast-check";
import { type Unzipped, unzipSync, zipSync } from "fflate";
import { expect, test } from "vitest";
import { planFor } from "../../src/sheets/plan";
import { readBook, writeBook } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { longLineup } from "../support/lineups";
import { RICH } from "./richBooks";

/**
 * Workbooks with some of their bytes changed: whatever is done with them ends soon, in an outcome or in a
 * message of ours. `FUZZ=100000 npx vitest run tests/xlsx/fuzz.test.ts` tries more of them.
 */
const RUNS = Number(process.env.FUZZ ?? 600);
const FOLDER = "tests/xlsx/fixtures";
const BOOKS: readonly Unzipped[] = [
  ...readdirSync(FOLDER)
    .filter((name) => name.endsWith(".xlsx"))
    .map((name) => unzipSync(readFileSync(join(FOLDER, name)))),
  ...Object.values(RICH).map((make) => unzipSync(make().file)),
];
const MARKUP = [
  "<",
  ">",
  "/",
  '"',
  "&",
  "&#0;",
  "<!--",
  "]]>",
  "<![CDATA[",
  "<!DOCTYPE a>",
  "\0",
  "é",
  "xmlns:",
  "</c>",
  "<row>",
  'r="A1"',
  "9".repeat(40),
];

type Change = (bytes: Uint8Array, at: number, length: number, put: string) => Uint8Array;
const joined = (...pieces: readonly Uint8Array[]) => Uint8Array.from(Buffer.concat(pieces));
const CHANGES: readonly Change[] = [
  // Taken out, written twice, written over, put in, cut off.
  (bytes, at, length) => joined(bytes.subarray(0, at), bytes.subarray(at + length)),
  (bytes, at, length) =>
    joined(
      bytes.subarray(0, at + length),
      bytes.subarray(at, at + length),
      bytes.subarray(at + length),
    ),
  (bytes, at, length, put) =>
    joined(bytes.subarray(0, at), Buffer.from(put), bytes.subarray(at + length)),
  (bytes, at, _length, put) => joined(bytes.subarray(0, at), Buffer.from(put), bytes.subarray(at)),
  (bytes, at) => bytes.subarray(0, at),
];

const mutation = fc.record({
  book: fc.nat(BOOKS.length - 1),
  part: fc.nat(),
  at: fc.double({ min: 0, max: 1, noNaN: true }),
  length: fc.nat(30),
  put: fc.constantFrom(...MARKUP),
  change: fc.nat(CHANGES.length - 1),
});

const mutated = (given: typeof mutation extends fc.Arbitrary<infer T> ? T : never) => {
  const parts = BOOKS[given.book] as Unzipped;
  const names = Object.keys(parts).filter((name) => /\.(xml|rels|vml)$/.test(name));
  const name = names[given.part % names.length] ?? "";
  const bytes = parts[name] ?? new Uint8Array();
  const at = Math.floor(given.at * bytes.length);
  const change = CHANGES[given.change] as Change;
  return zipSync({ ...parts, [name]: change(bytes, at, given.length, given.put) }, { level: 0 });
};

const plan = planFor(longLineup(1, {}));
/** Milliseconds of the processor, whatever else it does meanwhile. */
const SLOW = 5_000;
const processor = () => {
  const { user, system } = process.cpuUsage();
  return (user + system) / 1000;
};

test("no change of a part's bytes ends in anything but an outcome or a message", async () => {
  await fc.assert(
    fc.asyncProperty(mutation, async (given) => {
      const file = mutated(given);
      const before = processor();
      const runs = [
        () => readBook(file),
        () => markFile(file, [MARK]),
        ...(given.part % 8 === 0 ? [() => writeBook(plan, file)] : []),
      ];
      for (const run of runs)
        try {
          await run();
        } catch (error) {
          expect((error as Error).name).toBe("BookError");
          // What we did not foresee is wrapped too; here it is to be told in words of ours.
          expect((error as Error).message).not.toMatch(
            /Cannot read|undefined|not a function|Invalid array/,
          );
        }
      expect(processor() - before).toBeLessThan(SLOW);
    }),
    { numRuns: RUNS, seed: process.env.FUZZ ? undefined : 18 },
  );
}, 3_600_000);

const MARK = {
  rule: "future-date",
  weight: "stop",
  sheet: "Own",
  address: "B2",
  message: "invented",
} as const;
