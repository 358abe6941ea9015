import type { Host, Watch } from "./host";
import type { Book } from "./useBook";
import type { Work } from "./useWork";

/** What every step works with. */
export interface StepProps {
  readonly host: Host;
  /** Undefined until the workbook has been read. */
  readonly book: Book | undefined;
  readonly work: Work;
  readonly read: (watch: Watch) => Promise<Book>;
  readonly go: (sheet: string, address: string) => void;
}

/** Which rows the step of readings shows. */
export interface RowChoice {
  readonly kind: string | undefined;
  readonly object: string | undefined;
  /** A row of the kind's table that is looked at. */
  readonly row?: number;
}
