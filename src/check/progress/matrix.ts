import { busSections } from "../../lineup/busbar";
import type { FindingsText } from "../../messages/messages";
import { LINEUP } from "../../records/columns/common";
import { type Counts, countedAs, noCounts, type Report } from "../check";
import type { Context } from "../context";
import { isOpen } from "../findings/finding";

/** Counts of verdicts by panel or bus section and record kind. */
export interface Matrix {
  /** The lineup as a whole where it has records, bus sections, panels as they stand; then names that only the workbook knows. */
  readonly objects: readonly string[];
  readonly kinds: readonly { readonly id: string; readonly title: string }[];
  readonly cell: (object: string, kind: string) => Counts | undefined;
  /** Counts of a kind over all panels and sections. */
  readonly total: (kind: string) => Counts;
}

export function matrix(context: Context): Matrix {
  const counts = new Map<string, Map<string, Record<keyof Counts, number>>>();
  const totals = new Map<string, Record<keyof Counts, number>>();
  for (const table of context.tables)
    for (const [index, row] of table.judged.entries()) {
      const { kind, aside } = table;
      if (aside.has(index)) continue;
      const object = String(row.object ?? "");
      const kinds = counts.get(object) ?? new Map<string, Record<keyof Counts, number>>();
      const cell = kinds.get(kind.id) ?? noCounts();
      const total = totals.get(kind.id) ?? noCounts();
      const counted = countedAs(table, index, context);
      cell[counted]++;
      total[counted]++;
      totals.set(kind.id, total);
      counts.set(object, kinds.set(kind.id, cell));
    }
  const known = [
    ...(counts.has(LINEUP) ? [LINEUP] : []),
    ...busSections(context.lineup),
    ...context.lineup.panels.map(({ designation }) => designation),
  ];
  return {
    objects: [...new Set([...known, ...counts.keys()])],
    kinds: [...new Map(context.tables.map(({ kind }) => [kind.id, kind])).values()].map(
      ({ id, sheet }) => ({ id, title: sheet }),
    ),
    cell: (object, kind) => counts.get(object)?.get(kind),
    total: (kind) => totals.get(kind) ?? noCounts(),
  };
}

/** The words of counts, worst first: `1 fail, 2 missing, 9 pass`; blank where there is nothing. */
export const countWords = (
  counts: Counts | undefined,
  text: Pick<FindingsText, "counts">,
): string =>
  counts
    ? ORDER.flatMap((key) => (counts[key] > 0 ? [text.counts[key](counts[key])] : [])).join(", ")
    : "";

const ORDER: readonly (keyof Counts)[] = [
  "fail",
  "inconclusive",
  "missing",
  "open",
  "pass",
  "notRequired",
];

/** The verdict that a panel, or anything made of counts, is known by: its worst. */
export type Standing = "fail" | "inconclusive" | "missing" | "open" | "pass" | "none";

export const standing = (counts: readonly (Counts | undefined)[]): Standing =>
  (["fail", "inconclusive", "missing", "open", "pass"] as const).find((key) =>
    counts.some((one) => one && one[key] > 0),
  ) ?? "none";

/**
 * How each panel or bus section stands: by its rows, and by its findings, since a record that a finding
 * of weight `stop` stands against proves nothing, whatever its rows say.
 */
export function standings(
  { context, findings }: Report,
  { kinds, cell } = matrix(context),
): (object: string) => Standing {
  const stopped = new Set(
    findings
      .filter(isOpen)
      .flatMap(({ weight, panel }) => (weight === "stop" && panel ? [panel] : [])),
  );
  return (object) => {
    const rows = standing(kinds.map(({ id }) => cell(object, id)));
    return rows === "pass" && stopped.has(object) ? "inconclusive" : rows;
  };
}
