import { memoizeFor } from "../quantities/memoizeFor";

/**
 * How sure we are of a figure:
 * - `read`: read in a published copy or quotation of the source
 * - `memory`: set down from memory, to be confirmed against the source before anyone relies on it
 * - `practice`: common practice without a source
 * - `maker`, `project`: the maker's or project's own document
 */
export type Certainty = "read" | "memory" | "practice" | "maker" | "project";

/** Where a figure comes from. A criterion without its edition is a defect. */
export interface Source {
  readonly document: string;
  readonly edition: string;
  readonly place?: string;
  readonly certainty: Certainty;
  readonly note?: string;
}

/** One acceptance criterion: a figure, and where it comes from. */
export interface Criterion<T = number> {
  readonly value: T;
  readonly source: Source;
}

/** The standard whose criteria apply. A project's own criteria come before either. */
export const BASES = ["IEC", "NETA"] as const;
export type Basis = (typeof BASES)[number];

/** `NETA ATS-2025, table 100.1 (read)`: a source in one line, certainty always said. */
export const sourceText = memoizeFor(
  ({ document, edition, place, certainty, note }: Source): string =>
    `${[edition ? `${document}${/^(IEC|ISO)/.test(document) ? ":" : "-"}${edition}` : document, place].filter(Boolean).join(", ")} (${certainty}${note ? `; ${note}` : ""})`,
);
