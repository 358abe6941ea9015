import type { RULE_WEIGHTS } from "../../lineup/settings";

/**
 * How much a finding weighs:
 * - `stop`: the record does not prove what it must
 * - `query`: somebody has to answer before it does
 * - `note`: worth knowing
 */
export type Weight = (typeof RULE_WEIGHTS)[number];

/** One thing that the check found, at its cell. */
export interface Finding {
  readonly rule: string;
  readonly weight: Weight;
  /** Id of the record kind. */
  readonly record?: string;
  /** The panel or bus section. */
  readonly panel?: string;
  readonly sheet: string;
  /** A1 address on the sheet. */
  readonly address: string;
  /** Addresses of further rows of the same cause. */
  readonly further?: readonly string[];
  /** What names the row: its key cells in order. */
  readonly row?: string;
  /** Header of the column. */
  readonly column?: string;
  readonly message: string;
  readonly expected?: string | number;
  readonly found?: string | number;
  readonly source?: string;
  /** Accepted as it is: it stays listed and is no longer open. */
  readonly concession?: Concession;
}

/** Why, by whom and when a finding was accepted. */
export interface Concession {
  readonly reason: string;
  readonly name: string;
  /** As 2026-11-25. */
  readonly date: string;
}

/** Findings that nobody accepted yet. */
export const isOpen = ({ concession }: Finding): boolean => concession === undefined;
