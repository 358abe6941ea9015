import type { Bounded } from "../quantities/reading/bounded";
import { answer, type Result, refuse } from "../quantities/result";
import { notPositive } from "./notPositive";
import { upwards } from "./upwards";

/**
 * Exciting current of a current transformer at a voltage, from its measured excitation curve.
 *
 * Between two points the current lies on the straight line between them on log-log axes. Beyond the last point it
 * is known to be above the last current in proportion to the voltage, since the core saturates; below the first
 * point, to be below the first current.
 *
 * @param measuredVolts rms, V, above 0, rising throughout or falling throughout
 * @param measuredAmps rms exciting current, A, above 0, one for each voltage
 * @param at voltage asked for, V, above 0
 * @returns A, exact or a bound; `wrong` or `range` for lists that are no curve
 * @example excitingCurrent([100, 200], [0.01, 0.02], 150) // { value: 0.015, bound: "exact" }
 * @example excitingCurrent([100, 110], [5, 10], 220) // { value: 20, bound: "above" }
 */
export const excitingCurrent = (
  measuredVolts: readonly number[],
  measuredAmps: readonly number[],
  at: number,
): Result<Bounded> => {
  const [volts, amps] = upwards(measuredVolts, measuredAmps);
  const refusal = notPositive("Voltage", at, "V");
  if (refusal) return refusal;
  if (volts.length !== amps.length || volts.length < 2)
    return refuse("wrong", ({ engineering }) =>
      volts.length === amps.length
        ? engineering.fewerPoints(2, volts.length)
        : engineering.unpaired(volts.length, amps.length),
    );
  const isRising = volts.every((volt, i) => volt > (volts[i - 1] ?? 0));
  if (!isRising || !amps.every((ampere) => ampere > 0))
    return refuse("range", (text) => text.engineering.notRising);
  const last = volts.length - 1;
  const [firstV = 0, firstA = 0, lastV = 0, lastA = 0] = [
    volts[0],
    amps[0],
    volts[last],
    amps[last],
  ];
  if (at > lastV) return answer({ value: (lastA * at) / lastV, bound: "above" });
  if (at < firstV) return answer({ value: firstA, bound: "below" });
  const above = volts.findIndex((volt) => volt >= at);
  const [highV = 0, highA = 0] = [volts[above], amps[above]];
  const [lowV, lowA] = [volts[above - 1], amps[above - 1]];
  if (highV === at || lowV === undefined || lowA === undefined)
    return answer({ value: highA, bound: "exact" });
  const share = Math.log(at / lowV) / Math.log(highV / lowV);
  return answer({ value: lowA * (highA / lowA) ** share, bound: "exact" });
};
