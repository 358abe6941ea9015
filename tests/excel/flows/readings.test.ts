import { expect, test } from "vitest";
import { runSequences, STEP_NAMES } from "./model";
import { HOURS, runsOf, withoutWaiting } from "./runs";
import { lightBook, ownBook } from "./world";

withoutWaiting();

/** Readings come and go more often than anything else is done. */
const OFTEN = ["bring in", "bring in", "bring in", "bring in", "take back", "type into a row"];
const RECORDS = [
  ...OFTEN,
  ...STEP_NAMES.filter((name) => !["build", "undo the build", "map"].includes(name)),
];
const OWN = [...OFTEN, "map", "list the findings", "mark"];

test.each([
  ["sheets of ours", lightBook, RECORDS],
  ["somebody's own layout", ownBook, OWN],
] as const)(
  "%s: whatever is done to them between two batches, and whichever fails, no reading is lost or stands on another row, and what is done again comes to its end",
  async (_what, make, given) => {
    const { runs, ...seed } = runsOf(0.35);
    const { steps, acts, faults } = await runSequences(await make(), given, { runs, ...seed });
    expect(Math.min(steps, acts, faults)).toBeGreaterThan(runs / 2);
  },
  HOURS,
);
