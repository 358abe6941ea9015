import * as z from "zod";
import { DATE_ORDERS } from "../quantities/dates";

const name = z.string().min(1).max(200);

/**
 * What a user has said about exports of one shape, kept under a name: what columns mean by their
 * titles, how numbers and dates are written, whether phases lie across, and which names mean which.
 */
export const exportMapping = z.object({
  name,
  /** The titles of such a file, in plain words. */
  fingerprint: z.array(z.string().max(500)).max(2000),
  columns: z.record(z.string(), name).optional(),
  decimal: z.enum([".", ","]).optional(),
  dateOrder: z.enum(DATE_ORDERS).optional(),
  shape: z.enum(["long", "wide"]).optional(),
  /** By field, what a text of the export means here: `{ "object": { "Feld 1": "=H01" } }`. */
  means: z.record(z.string(), z.record(z.string(), name)).optional(),
});
export type ExportMapping = z.infer<typeof exportMapping>;
