import * as z from "zod/mini";

export const MANIFEST = "manifest.json";
export const RECORDS = "records.json";
export const TABLE = "records.csv";
export const REPORT = "report.pdf";
export const WORKBOOK = "records.xlsx";
export const PUNCH_LIST = "punch-list.xlsx";

const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));

/** A name within the folder: no way out of it. */
const fileName = z
  .string()
  .check(z.regex(/^(?!\.)[^/\\:]+(\/(?!\.)[^/\\:]+)?$/, "must be a file in the folder"));

/** What stands in `manifest.json`. */
export const manifestSchema = z.strictObject({
  format: z.literal("gearproof-handover-1"),
  project: z.string(),
  /** As 2026-11-25. */
  made: z.string(),
  /** False where the check for hand-over had stops. */
  final: z.boolean(),
  /** Name of the workbook that it was made from. */
  from: z.string(),
  /** SHA-256 of the content in canonical form (RFC 8785). */
  fingerprint: hash,
  files: z.array(z.strictObject({ name: fileName, bytes: z.int(), sha256: hash })),
  /** Exports that the workbook names and that were not found beside it. */
  notFound: z.array(z.string()),
});

export type Manifest = z.output<typeof manifestSchema>;
