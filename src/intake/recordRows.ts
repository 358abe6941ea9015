import type { RecordKind, Row } from "../records/kind";

/** A record table as far as placing needs it. A table of a workbook is one. */
export interface RecordRows {
  readonly kind: RecordKind;
  /** The rows as stored, by column id. */
  readonly rows: readonly Row[];
  /** Which column ids the table has; all of the kind's where not given. */
  readonly at?: ReadonlyMap<string, number>;
}
