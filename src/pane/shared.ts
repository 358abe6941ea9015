import type { Watch, WorkbookHost } from "./host";
import type { OpenedWorkbook } from "./openedWorkbook";
import type { Alone } from "./readings/bringIn";
import type { Work } from "./useWork";

/** What every step works with. */
export interface StepProps {
  readonly host: WorkbookHost;
  /** Undefined until the workbook has been read. */
  readonly book: OpenedWorkbook | undefined;
  readonly work: Work;
  readonly read: (watch: Watch) => Promise<OpenedWorkbook>;
  /** Reads what was filled, where nothing else has changed; else the whole workbook. */
  readonly readFilled: (watch: Watch, filled: Alone | undefined) => Promise<OpenedWorkbook>;
  readonly go: (sheet: string, address: string) => void;
}
