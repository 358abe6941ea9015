import * as z from "zod";
import { RECORDS_FORMAT } from "../handover/content";
import { lineupSchema } from "../lineup/lineup";
import { VERDICTS } from "../standards/judge";
import { comparison, counts, finding } from "./checkSchema";

const cell = z.union([z.string(), z.number(), z.boolean(), z.null()]);
const day = z.string().describe("as 2026-11-25; blank where not known");
const serial = z.number().optional().describe("serial day number of the 1900 system");

const instrument = z.strictObject({
  id: z.string(),
  kind: z.string(),
  serial: z.string(),
  calibrated: serial,
  due: serial,
  accuracyPercent: z.number().optional().describe("% of reading"),
});

const row = z.strictObject({
  sheet: z.string(),
  record: z.string().describe("id of the record kind"),
  title: z.string().describe("what the record kind is called"),
  panel: z.string().describe("the panel or bus section"),
  row: z.string().describe("what names the row: its keys"),
  state: z
    .enum(["open", "begun", "judged"])
    .describe("open: nothing recorded; begun: something recorded and something missing"),
  result: z.enum(VERDICTS),
  cells: z
    .array(
      z.strictObject({
        address: z.string().describe("A1 address on the sheet"),
        column: z.string().describe("header of the column"),
        role: z.enum(["key", "given", "entry", "limit", "computed", "result", "note"]),
        value: cell.describe("dates are serial day numbers of the 1900 system"),
        unit: z.string().optional(),
      }),
    )
    .describe("every cell that holds something"),
  comparisons: z.array(comparison),
  sources: z.string().describe("where its limits come from"),
});

const replaced = z.strictObject({
  sheet: z.string(),
  panel: z.string(),
  row: z.string(),
  column: z.string(),
  value: cell,
  date: day,
  source: z.string(),
  replacedOn: day,
});

const repair = z.strictObject({
  sheet: z.string(),
  panel: z.string(),
  row: z.string(),
  found: z.string().describe("as found: the failed reading and its result"),
  tested: day,
  cause: z.string(),
  work: z.string().describe("what was worked on"),
  done: z.string(),
  by: z.string(),
  date: day,
  left: z.string().describe("as left: the readings of the retest; blank where there is none yet"),
  retested: day,
});

const punch = z.strictObject({
  number: z.number(),
  panel: z.string(),
  what: z.string(),
  severity: z.string().describe("stop, query or note"),
  owner: z.string(),
  due: day,
  state: z.string().describe("Open, Closed or Accepted, or a word of the project's own"),
  note: z.string().describe("how it was closed"),
  files: z.string().describe("names of photos and files, with semicolons between them"),
  raised: day,
  closed: day,
  accepted: z.string().describe("why a finding was accepted, by whom and when"),
  check: z.string().describe("Found or Gone, by the last check; blank where written by hand"),
  sheet: z.string(),
  cell: z.string(),
});

/** What `records.json` of a hand-over holds. */
export const recordsSchema = z.strictObject({
  format: z.literal(RECORDS_FORMAT),
  checked: z.string().describe("day of the check for hand-over, as 2026-11-25"),
  lineup: lineupSchema,
  instruments: z.array(instrument),
  counts,
  rows: z.array(row),
  history: z.array(replaced).describe("readings that later ones have taken the place of"),
  repairs: z.array(repair).describe("what failed and was repaired, as found and as left"),
  punch: z.array(punch).describe("what is to be closed out, and what was"),
  findings: z.array(finding),
});

/** The schema of `records.json` as a file: JSON Schema, draft 2020-12. */
export const recordsJsonSchema = (): string =>
  `${JSON.stringify(z.toJSONSchema(recordsSchema, { unrepresentable: "any" }), null, 2)}\n`;
