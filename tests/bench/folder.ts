import { execFile } from "node:child_process";
import { mkdirSync, rmSync, symlinkSync } from "node:fs";
import { availableParallelism } from "node:os";
import { join, resolve } from "node:path";
import { promisify } from "node:util";
import { booksIn } from "../../src/cli/files/booksIn";
import { runJobs } from "../../src/cli/runJobs";
import { today } from "../../src/quantities/today";
import { longBook } from "./longBook";

/**
 * `npm run bench:folder [workbooks] [rows]`: a folder of so many workbooks (200) of about so many record
 * rows (700) checked by one worker and by one for each core, by turns, the least of three: the speed-up,
 * and workbooks a second. The processor time tells what the workers cost besides. As the peer, the same
 * folder shared among as many processes that know nothing of each other: what the machine itself gives for
 * a second core.
 */
const count = Number(process.argv[2] ?? 200);
const rows = Number(process.argv[3] ?? 700);
/** So many different workbooks; the folder holds each several times. */
const DIFFERENT = 8;

const folder = ".cache/bench-folder";
rmSync(folder, { recursive: true, force: true });
mkdirSync(folder, { recursive: true });
const made: string[] = [];
for (let seed = 1; seed <= DIFFERENT; seed++) made.push(resolve(await longBook(rows, seed)));
for (let at = 0; at < count; at++)
  symlinkSync(made[at % DIFFERENT] ?? "", join(folder, `book-${String(at).padStart(3, "0")}.xlsx`));

const books = booksIn([folder]);
const jobs = books.map((book) => ({ book, day: today(), whole: false }));
const timed = async (workers: number) => {
  const start = performance.now();
  const before = process.cpuUsage();
  const checked = await runJobs(jobs, () => {}, workers);
  const seconds = (performance.now() - start) / 1000;
  const { user, system } = process.cpuUsage(before);
  const failed = checked.filter(({ report }) => report.error !== undefined).length;
  process.stdout.write(
    `${workers} ${workers === 1 ? "worker " : "workers"} ${seconds.toFixed(2).padStart(7)} s  ${(count / seconds).toFixed(1)} workbooks a second, processor time ${((user + system) / 1e6).toFixed(2)} s${failed ? `, ${failed} could not be read` : ""}\n`,
  );
  return seconds;
};
const cores = availableParallelism();
const processes = async () => {
  const start = performance.now();
  await Promise.all(
    Array.from({ length: cores }, (_, share) =>
      promisify(execFile)(process.execPath, [
        "--import",
        "tsx",
        "tests/bench/folderShare.ts",
        ...books.filter((_book, at) => at % cores === share),
      ]),
    ),
  );
  const seconds = (performance.now() - start) / 1000;
  process.stdout.write(`${cores} processes ${seconds.toFixed(2).padStart(6)} s\n`);
  return seconds;
};
const turns: { one: number; all: number; apart: number }[] = [];
for (let turn = 0; turn < 3; turn++)
  turns.push({ one: await timed(1), all: await timed(cores), apart: await processes() });
const least = (of: keyof (typeof turns)[number]) => Math.min(...turns.map((turn) => turn[of]));
process.stdout.write(
  `speed-up of ${cores} workers over one: ${(least("one") / least("all")).toFixed(2)} (aim at least 1.7 on two cores); of processes apart: ${(least("one") / least("apart")).toFixed(2)}\n`,
);
