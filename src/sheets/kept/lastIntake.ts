import * as z from "zod/mini";

const cell = z.union([z.string(), z.number(), z.boolean(), z.null()]);

/** What the last intake wrote, so that it can be taken back. */
export const lastIntake = z.object({
  /** Serial day. */
  on: z.number(),
  files: z.array(z.string()),
  cells: z.array(
    z.object({
      table: z.string(),
      /** The record's key cells, by which its row is found again. */
      key: z.string(),
      row: z.int().check(z.minimum(0)),
      /** Column id. */
      column: z.string(),
      old: cell,
      value: cell,
    }),
  ),
  history: z.array(
    z.object({
      sheet: z.string(),
      row: z.string(),
      column: z.string(),
      value: cell,
      date: z.nullable(z.number()),
      source: z.string(),
      replacedOn: z.number(),
    }),
  ),
});
export type LastIntake = z.infer<typeof lastIntake>;
