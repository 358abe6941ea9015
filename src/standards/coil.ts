/** Least and greatest voltage that a coil must work at. */
export interface CoilRange {
  readonly least: number;
  readonly most: number;
  /** A lower least voltage that another published table prints for the same coil. */
  readonly lowest?: number;
}

/** Undervoltage release: highest voltage to pick up at, and the range to drop out in. */
export interface UndervoltageRange {
  readonly pickupMost: number;
  readonly dropoutLeast: number;
  readonly dropoutMost: number;
}
