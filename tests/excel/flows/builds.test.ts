import { expect, test } from "vitest";
import { runSequences } from "./model";
import { HOURS, runsOf, withoutWaiting } from "./runs";
import { builtBook } from "./world";

withoutWaiting();

const STEPS = [
  "build",
  "build",
  "undo the build",
  "bring in",
  "take back",
  "mark",
  "accept a finding",
];

test(
  "a whole workbook: whatever is done to it between two batches, and whichever fails, no reading is lost or stands on another row, and what is done again comes to its end",
  async () => {
    const { runs, ...seed } = runsOf(0.3);
    const { steps, acts, faults } = await runSequences(await builtBook(), STEPS, { runs, ...seed });
    expect(Math.min(steps, acts, faults)).toBeGreaterThan(runs / 2);
  },
  HOURS,
);
