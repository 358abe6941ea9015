import type { Criterion } from "./criterion";

const source = {
  document: "IEC 60229",
  edition: "2007",
  place: "clause 5, oversheath after laying",
  certainty: "quoted",
  by: "a test-set maker's manual",
  note: "4 kV for each mm of its thickness, at most 10 kV, 1 min; edition from memory",
} as const;

/** Direct voltage on the oversheath, kV for each mm of its thickness. */
export const perMillimetre: Criterion = { value: 4, source };

/** The most that is applied, kV. */
export const sheathMost: Criterion = { value: 10, source };

/** How long, min. */
export const sheathMinutes: Criterion = { value: 1, source };
