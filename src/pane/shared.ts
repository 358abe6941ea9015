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
