import { ratioError } from "../engineering/ratioError";
import { pure, ratioOf } from "./inputs";
import { spill } from "./spill";

/**
 * Ratio error of an instrument transformer, percent.
 * @customfunction RATIOERROR
 * @param primary Applied primary value
 * @param secondary Measured secondary value, in the same unit
 * @param ratio Rated ratio as a number, or as written on the plate, such as "400/5"
 * @returns Percent, negative where the transformer gives too little
 * @example =GEAR.RATIOERROR(400, 4.98, "400/5") // -0.4
 * @refuses =GEAR.RATIOERROR(400, 4.98, 0)
 */
export function ratioerror(
  primary: unknown[][],
  secondary: unknown[][],
  ratio: unknown[][],
): unknown[][] {
  return spill(
    [
      pure("Primary value", primary),
      pure("Secondary value", secondary),
      ratioOf("Rated ratio", ratio),
    ],
    ratioError,
  );
}
