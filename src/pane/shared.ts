import type { Watch, WorkbookHost } from "./host";
import type { OpenedWorkbook } from "./useBook";
import type { Work } from "./useWork";

/** What every step works with. */
export interface StepProps {
  readonly host: WorkbookHost;
  /** Undefined until the workbook has been read. */
  readonly book: OpenedWorkbook | undefined;
  readonly work: Work;
  readonly read: (watch: Watch) => Promise<OpenedWorkbook>;
  readonly go: (sheet: string, address: string) => void;
}
