/**
 * How much a finding weighs:
 * - `stop`: the record does not prove what it must
 * - `query`: somebody has to answer before it does
 * - `note`: worth knowing
 */
export type Weight = "stop" | "query" | "note";

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
  readonly message: string;
  readonly expected?: string | number;
  readonly found?: string | number;
  readonly source?: string;
}
