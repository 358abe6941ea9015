import { answer, type Result, refuse } from "../quantities/result";
import { insulationFactors } from "./insulationFactors";
import { interpolate } from "./interpolate";
import { outside } from "./outside";

export const INSULATION_METHODS = ["solid", "oil", "halving", "none"] as const;
export type InsulationMethod = (typeof INSULATION_METHODS)[number];

const [COLDEST, HOTTEST] = [-10, 105];

/**
 * Factor k that brings an insulation resistance to its base temperature: R_base = k · R_T.
 *
 * - `solid`, `oil`: ANSI/NETA ATS-2025, table 100.14 (read), factors to 20 °C, between two rows
 *   interpolated on the logarithm; to another base b: k(T) / k(b)
 * - `halving`: 2^((T − base) / 10), the quick form of IEEE 43-2013 (read)
 * - `none`: 1
 *
 * @param temperature of the insulation, −10 °C to 105 °C, the table's extent, for every method but `none`
 * @param base temperature to correct to, °C, in the same range
 * @returns a pure number above 0; `range` outside the table, `wrong` for an unknown method
 * @example insulationFactor(35, "oil") // 2.8
 * @example insulationFactor(30, "halving") // 2
 */
export const insulationFactor = (
  temperature: number,
  method: InsulationMethod = "solid",
  base = 20,
): Result<number> => {
  if (method === "none") return answer(1);
  if (!INSULATION_METHODS.includes(method))
    return refuse("wrong", (text) =>
      text.engineering.oneOf(text.name("Method"), INSULATION_METHODS),
    );
  return (
    outside("Insulation temperature", temperature, COLDEST, HOTTEST, "°C") ??
    outside("Base temperature", base, COLDEST, HOTTEST, "°C") ??
    answer(
      method === "halving"
        ? 2 ** ((temperature - base) / 10)
        : to20(method, temperature) / to20(method, base),
    )
  );
};

const to20 = (method: "solid" | "oil", temperature: number): number => {
  const row = insulationFactors[method].find(([at]) => at === temperature);
  return row ? row[1] : Math.exp(interpolate(LOGARITHMS[method], temperature) ?? Number.NaN);
};

const logarithms = (method: "solid" | "oil") =>
  insulationFactors[method].map(([at, factor]) => [at, Math.log(factor)] as const);

const LOGARITHMS = { solid: logarithms("solid"), oil: logarithms("oil") };
