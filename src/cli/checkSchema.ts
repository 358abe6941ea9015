import * as z from "zod";
import { RULE_WEIGHTS } from "../lineup/settings";
import { SENSES, VERDICTS } from "../standards/judge";

const found = z.union([z.string(), z.number()]);
const count = z.int().min(0);
const cell = z.union([z.string(), z.number(), z.boolean(), z.null()]);

/** A finding as it is printed. */
export const finding = z.strictObject({
  rule: z.string().describe("by which the reference, concessions and settings name the rule"),
  weight: z.enum(RULE_WEIGHTS),
  record: z.string().optional().describe("id of the record kind"),
  panel: z.string().optional().describe("the panel or bus section"),
  sheet: z.string(),
  address: z
    .string()
    .regex(/^[A-Z]{1,3}[1-9]\d*$/)
    .describe("A1 address on the sheet"),
  further: z
    .array(z.string())
    .optional()
    .describe("A1 addresses of further rows of the same cause"),
  row: z.string().optional().describe("what names the row: its keys"),
  column: z.string().optional().describe("header of the column"),
  message: z.string(),
  expected: found.optional(),
  found: found.optional(),
  source: z.string().optional(),
  concession: z
    .strictObject({ reason: z.string(), name: z.string(), date: z.string() })
    .optional()
    .describe("accepted as it is; no longer open"),
});

const verdict = z.enum(VERDICTS);
const cells = z.record(z.string(), cell).describe("by column id; blank ones are left out");

/** One comparison that a row's result rests on. */
export const comparison = z.strictObject({
  value: z.string().describe("id of the column that is judged"),
  found: cell,
  limitColumn: z.string().optional(),
  limit: cell,
  failsBeyond: cell
    .optional()
    .describe("a second limit that has to be missed as well for a failure"),
  unit: z.string().optional(),
  sense: z.enum([...SENSES, "word"]),
  tolerance: z.number().optional().describe("fraction of the limit granted"),
  decides: z.enum(["acceptance", "proof"]).describe("proof: without it the test proves nothing"),
  verdict,
});

/** Rows counted by their verdicts. */
export const counts = z.strictObject({
  pass: count,
  fail: count,
  missing: count.describe("rows of tests that were begun, without their reading"),
  open: count.describe("rows of tests of which nothing is recorded yet"),
  inconclusive: count,
  notRequired: count,
});

const row = z.strictObject({
  sheet: z.string(),
  address: z.string().describe("A1 address of its first key cell"),
  kind: z.string().describe("id of the record kind"),
  key: cells,
  entries: cells,
  computed: cells,
  comparisons: z.array(comparison),
  sources: z.string().describe("where its limits come from"),
  result: verdict,
});

const against = z.strictObject({
  file: z.string(),
  closed: z.array(finding),
  fresh: z.array(finding),
  changed: z.array(z.strictObject({ before: finding, after: finding })),
  same: count,
  altered: z.array(
    z.strictObject({
      record: z.string(),
      sheet: z.string(),
      address: z.string(),
      row: z.string(),
      column: z.string(),
      before: cell,
      after: cell,
      rows: z.optional(count).describe("how many rows were altered alike, where more than one"),
    }),
  ),
});

/** A table of a workbook in somebody's own layout, as it was recognised. */
const block = z.strictObject({
  sheet: z.string(),
  range: z.string().describe("A1 range of its cells, its titles among them"),
  kind: z.string().describe("id of the record kind, the first where it holds several"),
  kinds: z.array(z.string()),
  panels: z.array(z.string()).describe("as they are written"),
  readings: count,
  units: z.array(z.string()).describe("units of the readings, the most frequent first"),
  evidence: z.string().describe("by what it was recognised, in words"),
});

/** What `check --json` prints. */
export const checkSchema = z.strictObject({
  files: z.array(
    z.strictObject({
      file: z.string(),
      error: z.string().optional().describe("why the file could not be checked"),
      counts: counts.optional(),
      rows: z.array(row).optional().describe("every record row as it was judged"),
      findings: z.array(finding).optional(),
      blocks: z
        .array(block)
        .optional()
        .describe("of a workbook in somebody's own layout, the tables that were recognised"),
      questions: z
        .array(z.string())
        .optional()
        .describe("what no cell says and a verdict needs, each with the option that answers it"),
      against: against.optional().describe("compared with an earlier revision"),
    }),
  ),
});

/** The same as JSON Schema, as `npm run docs` writes it. */
export const checkJsonSchema = (): string =>
  `${JSON.stringify(z.toJSONSchema(checkSchema), null, 2)}\n`;
