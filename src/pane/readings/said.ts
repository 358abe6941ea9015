import type { Asked } from "../../intake/placement";
import type { DateOrder } from "../../quantities/dates";
import type { DecimalMark } from "../../quantities/readNumber";

/** What the user has said about an export; whatever is not said is found by inspection. */
export interface Said {
  /** Fields by title. */
  readonly columns: Readonly<Record<string, string>>;
  readonly decimal?: DecimalMark | undefined;
  readonly dateOrder?: DateOrder | undefined;
  /** What texts of the export mean here, by field. */
  readonly means: Readonly<Partial<Record<Asked, Readonly<Record<string, string>>>>>;
}

export const NOTHING_SAID: Said = { columns: {}, means: {} };
