import type { Column } from "../kind";
import { answered } from "./common";

/** The voltage that was applied in a withstand test. */
export const appliedColumn = (more: Pick<Column, "help" | "wave">, most = 400): Column => ({
  id: "applied",
  header: "Applied kV",
  role: "entry",
  width: 9,
  unit: "kV",
  accepts: { type: "number", least: 0, most },
  need: "reading",
  ...more,
});

/** How long it was applied. */
export const durationColumn = (most: number): Column => ({
  id: "duration",
  header: "Duration s",
  role: "entry",
  width: 9,
  unit: "s",
  accepts: { type: "number", least: 0, most },
  need: "condition",
});

/** The current that flowed, which is recorded and not judged. */
export const currentColumn = (help?: string): Column => ({
  id: "current",
  header: "Current mA",
  role: "entry",
  width: 9,
  unit: "mA",
  accepts: { type: "number", least: 0, most: 100000 },
  need: "trail",
  ...(help === undefined ? {} : { help }),
});

export const discharge: Column = answered("discharge", "Discharge", ["No", "Yes"], {
  width: 9,
  help: "Did a disruptive discharge occur?",
});
