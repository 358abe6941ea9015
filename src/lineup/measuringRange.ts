import * as z from "zod/mini";
import { readUnit } from "../quantities/reading/readUnit";
import { must } from "./must";

/** What an instrument measures within: from `least`, 0 where nothing is said, to `most`. */
export const measuringRange = z
  .strictObject({
    least: z.optional(z.number()),
    most: z.number(),
    /** A unit of what it measures: MΩ, kV, °C, kPa … */
    unit: z.string().check(
      z.refine((unit) => readUnit(unit).ok, {
        error: must("unit"),
      }),
    ),
  })
  .check(z.refine(({ least = 0, most }) => least < most, must("leastBelowMost")));
