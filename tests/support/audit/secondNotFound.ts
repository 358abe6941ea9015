/** Faults of the second auditor's that no rule finds, by their number, and why. */
export const SECOND_NOT_FOUND: ReadonlyMap<string, string> = new Map([
  [
    "B017",
    "the angle of a stability test is recorded and not judged: which way it counts depends on the relay",
  ],
  ["B023", "a pole may close without a bounce that the analyser shows"],
  ["B053", "of a hundred readings of six digits two are the same by chance once in fifty tables"],
]);
