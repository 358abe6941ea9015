import type { Column } from "../kind";

export const PHASES = ["L1", "L2", "L3"] as const;

/** What a record of the whole lineup, and not of one panel or section, is about. */
export const LINEUP = "Lineup";

/** Who and when, of what is looked at and not measured. */
export const signed = (by = "Checked by", date = "Date"): Column[] => [
  {
    id: "date",
    header: date,
    role: "entry",
    width: 12,
    format: "yyyy-mm-dd",
    accepts: { type: "date" },
    need: "trail",
  },
  {
    id: "by",
    header: by,
    role: "entry",
    width: 18,
    accepts: { type: "text" },
    need: "trail",
  },
];

/** Columns that every table of tests ends with: who, when, with what. */
export const trail = (): Column[] => [
  ...signed("Tested by").map((column) =>
    column.id === "date" ? { ...column, help: "Day of the test." } : column,
  ),
  {
    id: "instrument",
    header: "Instrument",
    role: "entry",
    width: 11,
    accepts: { type: "text" },
    need: "trail",
    help: "Its Id in the table of instruments; several, such as a thermometer beside the meter, with semicolons between them.",
  },
];

/** An entry answered by one of these words, the first of which is right. */
export const answered = (
  id: string,
  header: string,
  [right, ...others]: readonly [string, ...string[]],
  more: Partial<Column> & {
    readonly also?: readonly string[];
    readonly exempt?: string;
    readonly always?: string;
    readonly asked?: string;
  } = {},
): Column => {
  const { also, exempt, always, asked, ...column } = more;
  return {
    id,
    header,
    role: "entry",
    width: 11,
    accepts: { type: "list", values: [right, ...others], right, also, exempt, always, asked },
    need: "condition",
    ...column,
  };
};

/** What a cell that follows by formula holds where there is nothing to answer with. */
export const NOT_COMPUTED = "not computed";
export const NOT_CORRECTED = "not corrected";
export const NOT_READ = "not read";

export const OK = "OK";
export const NOT_OK = "Not OK";
export const NOT_APPLICABLE = "Not applicable";

export const closing = (): Column[] => [
  { id: "remarks", header: "Remarks", role: "note", width: 18 },
  {
    id: "origin",
    header: "Origin",
    role: "note",
    width: 26,
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

/** A formula's number of a cell that people also fill with the unit behind it; an error where it is none. */
export const numberIn = (cell: string, unit: string): string =>
  `IF(ISNUMBER(${cell}),${cell},${gear("QUANTITY", cell, unit)})`;

/** A formula's test for a cell with nothing in it; spaces alone are nothing. */
export const blank = (cell: string): string => `TRIM(${cell})=""`;
