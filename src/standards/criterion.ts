import { memoizeFor } from "../quantities/memoizeFor";

/**
 * How sure we are of a figure:
 * - `read`: read in a published copy of the source
 * - `quoted`: read in another document that quotes it or states the same figure; `by` says which
 * - `signed`: from memory, and engineers of the trade have signed verdicts on it
 * - `memory`: set down from memory; it decides nothing until somebody confirms it
 * - `confirmed`: from memory, confirmed in the lineup; `by` says by whom
 * - `practice`: common practice without a source
 * - `maker`, `project`: the maker's or project's own document
 */
export type Certainty =
  | "read"
  | "quoted"
  | "signed"
  | "memory"
  | "confirmed"
  | "practice"
  | "maker"
  | "project";

/** Where a figure comes from. A criterion without its edition is a defect. */
export interface Source {
  readonly document: string;
  readonly edition: string;
  readonly place?: string;
  readonly certainty: Certainty;
  /** Where it was read, who quotes it, or who confirmed it. */
  readonly by?: string;
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

/** `IEC 62271-1:2017, table 1`: what a source is called, by which a lineup confirms it. */
export const sourceName = ({ document, edition, place }: Source): string =>
  [edition ? `${document}${/^(IEC|ISO)/.test(document) ? ":" : "-"}${edition}` : document, place]
    .filter(Boolean)
    .join(", ");

/** What a certainty is called beside a limit, where that is not its own word. */
const SHOWN: Partial<Record<Certainty, string>> = { signed: "from memory, in common use" };

/** `ANSI/NETA ATS-2025, table 100.1 (read)`: a source in one line, certainty always said. */
export const sourceText = memoizeFor((source: Source): string => {
  const { certainty, by, note } = source;
  const known = SHOWN[certainty] ?? certainty;
  return `${sourceName(source)} (${[known + (by ? `: ${by}` : ""), note].filter(Boolean).join("; ")})`;
});
