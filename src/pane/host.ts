import type { Finding } from "../check/finding";
import type { Plan } from "../sheets/plan";
import type { Reconciled } from "../sheets/reconcile";
import type { Snapshot } from "../sheets/snapshot";

/** How a long piece of work is watched and stopped. */
export interface Watch {
  readonly progress: (done: number, total: number) => void;
  readonly signal: AbortSignal;
}

/** What the pane needs of the workbook that it stands beside. */
export interface Host {
  read(watch: Watch): Promise<Snapshot>;
  build(plan: Plan, watch: Watch): Promise<Reconciled>;
  mark(findings: readonly Finding[], watch: Watch): Promise<{ readonly cells: number }>;
  clearMarks(watch: Watch): Promise<number>;
  goTo(sheet: string, address: string): Promise<void>;
}
