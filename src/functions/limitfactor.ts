import { accuracyLimitFactor } from "../engineering/accuracyLimitFactor";
import { pure, quantity } from "./inputs";
import { spill } from "./spill";

/**
 * Accuracy limit factor that a protective current transformer has left at its actual burden.
 * @customfunction LIMITFACTOR
 * @param factor Rated accuracy limit factor, such as 20 of 5P20
 * @param winding Secondary winding resistance at 75 °C, Ω
 * @param rated Rated burden, Ω
 * @param actual Connected burden with leads, Ω
 * @returns Factor, a pure number
 * @example =GEAR.LIMITFACTOR(9, 3, 5, 0.6) // 20
 * @refuses =GEAR.LIMITFACTOR(9, 0, 5, 0)
 */
export function limitfactor(
  factor: unknown[][],
  winding: unknown[][],
  rated: unknown[][],
  actual: unknown[][],
): unknown[][] {
  return spill(
    [
      pure("Accuracy limit factor", factor),
      quantity("Winding resistance", winding, "Ω"),
      quantity("Rated burden", rated, "Ω"),
      quantity("Actual burden", actual, "Ω"),
    ],
    accuracyLimitFactor,
  );
}
