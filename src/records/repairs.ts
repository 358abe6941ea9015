import type { Row } from "./kind";

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

/**
 * How a work makes tests of a kind void that were made before it (common practice, no source): those of the
 * panel that was worked on, or of its bus section.
 */
export interface VoidBy {
  readonly reach: "panel" | "section";
  /** The rows that it can reach; without it, all. */
  readonly of?: (row: Row) => boolean;
  /** True where it depends on what was touched, so that it is asked and not said. */
  readonly asks?: true;
}

/** Tests of a kind that works make void, by work. */
export type VoidByWork = Readonly<Partial<Record<Work, VoidBy>>>;

const PANEL: VoidBy = { reach: "panel" };
const ASKED: VoidBy = { reach: "panel", asks: true };

/** Works that make the tests of a panel void, and those of which it depends on what was touched. */
export const voidBy = (works: readonly Work[], asked: readonly Work[] = []): VoidByWork =>
  Object.fromEntries([
    ...works.map((work) => [work, PANEL] as const),
    ...asked.map((work) => [work, ASKED] as const),
  ]);

/** A bus joint that was opened: the whole section stood open. */
export const SECTION: VoidBy = { reach: "section" };
