import { BookError } from "../bookError";

/** The variable of the environment that raises the limits so many times. */
const RAISED_BY = "GEARPROOF_LIMITS";

/** 1 where nothing sensible is said. */
const raised = (): number => {
  const said = Number(globalThis.process?.env?.[RAISED_BY] ?? 1);
  return said >= 1 && said <= 100 ? said : 1;
};

/**
 * What one workbook may hold, each far above what people keep, so that none takes all the memory there is.
 * The cells go beyond 500 MB: a million record rows of ours take some 2 GB to check; all else stays below.
 */
const LIMITS = {
  /** Cells that hold something, on one sheet. */
  cells: 20_000_000,
  /** Different texts of the workbook. */
  texts: 2_000_000,
  /** Elements of a part that is read whole: notes, links, styles. */
  elements: 500_000,
  /** Bytes of what the workbook remembers for Gearproof. */
  remembered: 50_000_000,
  /** Steps to find which array formula fills a cell: each cell has one at most. */
  "steps to its array formulas": 20_000_000,
  /** Panels of a lineup that a workbook is built of. */
  panels: 2_000,
} as const;

type Limited = keyof typeof LIMITS;

export const limitOf = (what: Limited): number => LIMITS[what] * raised();

/** What is said where a workbook goes beyond a limit. */
export const beyond = (what: Limited): BookError =>
  new BookError(({ book }) =>
    book.beyond(limitOf(what), book.limits[what], `${RAISED_BY}=${raised() * 2}`),
  );
