import { totalmem } from "node:os";
import type { ResourceLimits } from "node:worker_threads";

/** Cells are read by the million and soon let go: with twice the room a check takes no less time and 70 MB more (measured). */
const YOUNG_MB = 48;
/** The part of the machine's memory that workbooks may take together. */
const SHARE = 0.7;

/** The most room that a thread may take where so many workbooks are looked at at once. */
export const roomOf = (workbooks: number): ResourceLimits => ({
  maxYoungGenerationSizeMb: YOUNG_MB,
  maxOldGenerationSizeMb: Math.floor((SHARE * totalmem()) / 1e6 / workbooks),
});

/** Whether a thread ended for want of room. */
export const isOutOfRoom = (error: unknown): boolean =>
  error instanceof Error && "code" in error && error.code === "ERR_WORKER_OUT_OF_MEMORY";
