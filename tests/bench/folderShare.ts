import { runJobs } from "../../src/cli/runJobs";
import { today } from "../../src/quantities/today";

// A share of a folder, checked by a process of its own with one worker.
const [, , ...books] = process.argv;
await runJobs(
  books.map((book) => ({ book, day: today(), whole: false })),
  () => {},
  1,
);
