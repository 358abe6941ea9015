import { expect, test } from "vitest";
import { SECOND_NOT_FOUND } from "../support/audit/secondNotFound";
import { secondRun } from "../support/secondAudit";

/** Every sixth case of the second auditor; `npm run bench:faults` has them all. */
const share = <T>(all: readonly T[]): T[] => all.filter((_, at) => at % 6 === 0);

test("a second auditor's single faults are found at the right place, and his harmless differences raise no alarm", async () => {
  const run = await secondRun(share);
  const missed = run.faults.filter(({ told }) => told !== "found").map(({ fault: { id } }) => id);
  expect(run.faults.length).toBeGreaterThan(10);
  expect(missed.filter((id) => !SECOND_NOT_FOUND.has(id))).toEqual([]);
  expect(run.harmless.filter(({ findings }) => findings.length > 0)).toEqual([]);
}, 120_000);
