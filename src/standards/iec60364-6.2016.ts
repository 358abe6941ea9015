import type { Criterion } from "./criterion";

const source = {
  document: "IEC 60364-6",
  edition: "2016",
  place: "least insulation resistance, circuits up to 500 V",
  certainty: "quoted",
  by: "a railway administration's technical rules (1 MΩ at 500 V DC)",
  note: "edition from memory",
} as const;

/** Least insulation resistance of a low-voltage circuit, MΩ. */
export const minimum: Criterion = { value: 1, source };

/** Test voltage for it, V DC. */
export const testVoltage: Criterion = { value: 500, source };
