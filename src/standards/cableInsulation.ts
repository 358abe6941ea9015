import type { Criterion, Source } from "./criterion";

const source: Source = {
  document: "A published guide specification for the site test of cables before connection",
  edition: "",
  place: "1000 V DC, 1 min",
  certainty: "read",
  note: "local rules and the cable maker's value differ and come first",
};

/** Least insulation resistance of a cable before connection, MΩ (read in a guide specification). */
export const cableMinimum: Criterion = { value: 2, source };

/** Least DC test voltage for the insulation resistance of a cable, V (read in a guide specification). */
export const cableTestVoltage: Criterion = { value: 1000, source };
