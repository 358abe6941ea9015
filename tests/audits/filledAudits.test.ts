import { expect, test } from "vitest";
import { FILLED_AUDITORS, FILLED_NOT_FOUND, filledRun } from "../support/filledAudits";

test.each(FILLED_AUDITORS)(
  "every tenth fault of the %s auditor's is found at the right place, and his harmless differences raise no alarm",
  async (auditor) => {
    const { faults, harmless } = await filledRun(auditor, (all) =>
      all.filter((_, at) => at % 10 === 0),
    );
    const missed = faults.filter(({ told }) => told !== "found").map(({ fault }) => fault.id);
    expect(missed.filter((id) => !FILLED_NOT_FOUND.has(id))).toEqual([]);
    expect(harmless.filter(({ findings }) => findings.length > 0)).toEqual([]);
  },
  120_000,
);
