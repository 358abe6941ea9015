import * as z from "zod/mini";
import { BASES } from "../../standards/criterion";

/** Something that a person says of a cell: its row holds the titles, its column or the cell itself is this. */
const correction = z.object({
  sheet: z.string().check(z.maxLength(100)),
  address: z.string().check(z.regex(/^[A-Z]{1,3}[1-9]\d{0,6}$/)),
  of: z.enum(["row", "column", "cell"]),
  /** `head`, or what the survey calls it. */
  is: z.string().check(z.minLength(1), z.maxLength(40)),
});
export type Correction = z.infer<typeof correction>;

/** What was answered for a workbook in layouts of its own, and the day on which it was. */
export const surveyAnswers = z.object({
  /** Serial day. */
  on: z.number(),
  ratedkV: z.optional(z.number().check(z.positive(), z.maximum(1000))),
  basis: z.optional(z.enum(BASES)),
  corrections: z.optional(z.readonly(z.array(correction).check(z.maxLength(500)))),
});
export type SurveyAnswersKept = z.infer<typeof surveyAnswers>;
