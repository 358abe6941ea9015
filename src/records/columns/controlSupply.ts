import type { Lineup } from "../../lineup/lineup";
import type { Breaker } from "../../lineup/plate";
import { supplyOf } from "../../standards/coilRange";

/** Rated voltage and kind of a coil's supply. */
export interface Supply {
  readonly volts: number | undefined;
  readonly kind: "AC" | "DC" | undefined;
}

const supply = (volts: number | undefined, kind: "AC" | "DC" | undefined): Supply => ({
  volts,
  kind: kind ?? (volts === undefined ? undefined : supplyOf(volts)),
});

/** Supply of a breaker's closing circuit: its own, else the lineup's. */
export const closingSupplyOf = ({ controlV, controlKind }: Breaker, { ratings }: Lineup): Supply =>
  supply(
    controlV ?? ratings.controlV,
    controlKind ?? (controlV === undefined ? ratings.controlKind : undefined),
  );

/** Supply of its opening releases: their own, else that of the closing circuit. */
export const openingSupplyOf = (breaker: Breaker, lineup: Lineup): Supply => {
  const { openingControlV, openingControlKind } = breaker;
  const { volts, kind } = closingSupplyOf(breaker, lineup);
  return openingControlV === undefined
    ? { volts, kind: openingControlKind ?? kind }
    : supply(openingControlV, openingControlKind);
};
