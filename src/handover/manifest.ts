import * as z from "zod/mini";
import { fingerprintOf } from "./fingerprint";

export const MANIFEST = "manifest.json";
export const RECORDS = "records.json";
export const TABLE = "records.csv";
export const REPORT = "report.pdf";
export const WORKBOOK = "records.xlsx";
export const PUNCH_LIST = "punch-list.xlsx";
/** Folder of the exports that were brought in. */
export const EXPORTS = "exports";
/** An Ed25519 signature (RFC 8032) of the manifest's bytes, by the firm's own key. */
export const SIGNATURE = "manifest.sig";

/** Files of which a person waits for each, in the order in which they are made. */
export const STEPS = [WORKBOOK, PUNCH_LIST, REPORT, MANIFEST] as const;
export type Step = (typeof STEPS)[number];

const hash = z.string().check(z.regex(/^[0-9a-f]{64}$/));

/** A name within the folder: no way out of it. */
const fileName = z
  .string()
  .check(z.regex(/^(?!\.)[^/\\:]+(\/(?!\.)[^/\\:]+)?$/, "must be a file in the folder"));

/** What stands in `manifest.json`. */
export const manifestSchema = z.strictObject({
  format: z.literal("gearproof-handover-2"),
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
  /** Exports, photos and papers that the workbook names and that were not found beside it, those under a name that no file can have among them. */
  notFound: z.array(z.string()),
  /** SHA-256 of each export as it was noted when it was brought in, by its name; none of workbooks that noted none. */
  noted: z.optional(z.record(z.string(), hash)),
  /** SHA-256 of all this besides, in canonical form (RFC 8785). */
  seal: hash,
});

export type Manifest = z.output<typeof manifestSchema>;

/** The exports that are not the files that were brought in, by what was noted of them. */
export const otherThanNoted = ({ files, noted = {} }: Pick<Manifest, "files" | "noted">) =>
  files.flatMap(({ name, sha256 }) => {
    const before = name.startsWith(`${EXPORTS}/`)
      ? noted[name.slice(EXPORTS.length + 1)]
      : undefined;
    return before === undefined || before === sha256 ? [] : [name];
  });

/** A manifest with its seal. */
export const sealed = async (manifest: Omit<Manifest, "seal">): Promise<Manifest> => ({
  ...manifest,
  seal: await fingerprintOf(manifest),
});

/** Whether a manifest is as it was sealed. */
export const isSealed = async ({ seal, ...manifest }: Manifest): Promise<boolean> =>
  seal === (await fingerprintOf(manifest));
