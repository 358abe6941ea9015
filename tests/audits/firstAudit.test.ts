import { expect, test } from "vitest";
import { NOT_FOUND } from "../support/audit/notFound";
import { auditCases, auditRun } from "../support/auditRun";

/** Every tenth case of the auditor; `npm run bench:faults` has them all. */
const share = <T>(all: readonly T[]): T[] => all.filter((_, at) => at % 10 === 0);

test("an auditor's single faults are found at the right place, and his harmless differences raise no alarm", async () => {
  const { faults, harmless } = auditCases();
  const run = await auditRun({ faults: share(faults), harmless: share(harmless) });
  const missed = run.faults.filter(({ told }) => told !== "found").map(({ fault }) => fault.id);
  expect(missed.filter((id) => !NOT_FOUND.has(id))).toEqual([]);
  expect(run.harmless.filter(({ findings }) => findings.length > 0)).toEqual([]);
}, 120_000);
