import { expect, test } from "vitest";
import { thirdRun } from "../support/thirdAudit";

test("every tenth fault of a third auditor's is found at the right place, and his harmless differences raise no alarm", async () => {
  const { faults, harmless } = await thirdRun((all) => all.filter((_, at) => at % 10 === 0));
  expect(faults.filter(({ told }) => told !== "found").map(({ fault }) => fault.id)).toEqual([]);
  expect(harmless.filter(({ findings }) => findings.length > 0)).toEqual([]);
}, 120_000);
