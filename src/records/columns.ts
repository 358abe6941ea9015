import type { Column } from "./kind";

export const PHASES = ["L1", "L2", "L3"] as const;

/** Columns that every record table ends with: who, when, with what, and where a reading came from. */
export const trail = (): Column[] => [
  {
    id: "date",
    header: "Date",
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
    need: "trail",
    help: "Day of the test.",
  },
  {
    id: "by",
    header: "Tested by",
    role: "entry",
    width: 18,
    accepts: { type: "text" },
    need: "trail",
  },
  {
    id: "instrument",
    header: "Instrument",
    role: "entry",
    width: 11,
    accepts: { type: "text" },
    need: "trail",
    help: "Its Id in the table of instruments.",
  },
];

export const closing = (): Column[] => [
  { id: "remarks", header: "Remarks", role: "note", width: 18 },
  {
    id: "origin",
    header: "Origin",
    role: "note",
    width: 16,
    help: "File and line that a reading was taken from.",
  },
];

export const result = (
  formula: NonNullable<Column["formula"]>,
  value: NonNullable<Column["value"]>,
): Column => ({ id: "result", header: "Result", role: "result", width: 12, formula, value });

/** Text of a formula's string argument, quotes doubled. */
export const quoted = (text: string): string => `"${text.replaceAll('"', '""')}"`;

/** A worksheet function of ours in the form that a file stores. */
export const gear = (name: string, ...args: (string | number)[]): string =>
  `_xldudf_GEAR_${name}(${args.join(",")})`;

/** A formula's test for a cell with nothing in it; spaces alone are nothing. */
export const blank = (cell: string): string => `TRIM(${cell})=""`;
