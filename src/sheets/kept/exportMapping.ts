import * as z from "zod/mini";
import { DATE_ORDERS } from "../../quantities/dates";

const name = z.string().check(z.minLength(1), z.maxLength(200));

/**
 * What a user has said about exports of one shape, kept under a name: what columns mean by their
 * titles, how numbers and dates are written, whether phases lie across, and which names mean which.
 */
export const exportMapping = z.object({
  name,
  /** The titles of such a file, in plain words. */
  fingerprint: z.array(z.string().check(z.maxLength(500))).check(z.maxLength(2000)),
  columns: z.optional(z.record(z.string(), name)),
  decimal: z.optional(z.enum([".", ","])),
  dateOrder: z.optional(z.enum(DATE_ORDERS)),
  shape: z.optional(z.enum(["long", "wide"])),
  /** By field, what a text of the export means here: `{ "object": { "Feld 1": "=H01" } }`. */
  means: z.optional(z.record(z.string(), z.record(z.string(), name))),
});
export type ExportMapping = z.infer<typeof exportMapping>;
