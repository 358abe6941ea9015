/** Faults of the auditor's that no rule finds, by their number in his list, and why. */
export const NOT_FOUND: ReadonlyMap<string, string> = new Map([
  [
    "A121",
    "the breakers of this lineup close within 0.6 ms of each other, read to 0.1 ms: three times that are those of another breaker are nothing strange",
  ],
  [
    "A234",
    "the records give days without hours, and a crew can do two jobs on one day in a lineup of ten panels",
  ],
]);
