/** What a title, a label or a line of a heading can be about. */
export const CONCEPTS = [
  "corrected",
  "change",
  "spread",
  "error",
  "due",
  "calibrated",
  "discharge",
  "duration",
  "leakage",
  "factor",
  "humidity",
  "air",
  "temperature",
  "primary",
  "secondary",
  "ratio",
  "class",
  "required",
  "minimum",
  "maximum",
  "limit",
  "voltage",
  "current",
  "date",
  "time",
  "result",
  "tester",
  "by",
  "instrument",
  "serial",
  "remarks",
  "stage",
  "operation",
  "position",
  "part",
  "test",
  "panel",
  "name",
  "index",
  "reading",
  "unit",
] as const;
export type Concept = (typeof CONCEPTS)[number];

/** Phrases, each the inside of a regular expression over plain words: lower case, without punctuation. */
export type Phrases = readonly string[];

/** What workbooks of one language call things; common practice, no source. */
export interface SheetWords {
  /** Titles and labels; the first concept of the list in `CONCEPTS` that matches counts. */
  readonly titles: Readonly<Partial<Record<Concept, Phrases>>>;
  /** Tests, by the id of the record kind. */
  readonly kinds: Readonly<Record<string, Phrases>>;
  readonly before: Phrases;
  readonly after: Phrases;
  readonly closing: Phrases;
  readonly opening: Phrases;
  readonly pass: Phrases;
  readonly fail: Phrases;
  readonly yes: Phrases;
  readonly no: Phrases;
  /** What stands in a cell for which there is nothing to measure. */
  readonly notApplicable: Phrases;
  /** What stands in a cell for a reading that was not taken. */
  readonly notDone: Phrases;
  /** How lines of sums and extremes begin. */
  readonly summaries: Phrases;
  /** Words of a limit in running text: at least, at most. */
  readonly atLeast: Phrases;
  readonly atMost: Phrases;
  /** Words for a limit whose side goes without saying. */
  readonly limit: Phrases;
  /** Words beside the rated voltage of the switchgear. */
  readonly rated: Phrases;
  /** Number words before "minute". */
  readonly one: Phrases;
}
