/** What was worked on in a repair, as the sheet Repairs has it (common practice, no source). */
export const WORKS = [
  "Bus joint",
  "Circuit joint",
  "Earth connection",
  "Main insulation",
  "Gas compartment",
  "Breaker mechanism",
  "Breaker pole",
  "Current transformer",
  "Voltage transformer",
  "Wiring",
  "Relay or settings",
  "Meter",
  "Cable",
  "Surge arrester",
  "DC supply",
  "Other",
] as const;
export type Work = (typeof WORKS)[number];

type OfPanel = { readonly reach: "panel"; readonly asks?: true };
const PANEL: OfPanel = { reach: "panel" };
const ASKED: OfPanel = { reach: "panel", asks: true };

/** Works that make the tests of a panel void, and those of which it depends on what was touched. */
export const voidBy = (
  works: readonly Work[],
  asked: readonly Work[] = [],
): Readonly<Partial<Record<Work, OfPanel>>> =>
  Object.fromEntries([
    ...works.map((work) => [work, PANEL] as const),
    ...asked.map((work) => [work, ASKED] as const),
  ]);

/** A bus joint that was opened: the whole section stood open. */
export const SECTION = { reach: "section" } as const;
