import { answer, type Result, refuse } from "../quantities/result";
import type { Criterion } from "./criterion";
import type { NamedTable } from "./table";

/** Diameter of the rod or wire that an enclosure keeps out, by the first characteristic numeral of its degree of protection. */
export const openings = {
  title: "Degree of protection: diameter that does not go in, mm",
  source: {
    document: "IEC 60529",
    edition: "2013",
    place: "first characteristic numeral",
    certainty: "quoted",
    by: "tables of several makers, which agree; edition from memory",
  },
  of: "first numeral",
  columns: { mm: "mm" },
  rows: {
    "1": { mm: 50 },
    "2": { mm: 12.5 },
    "3": { mm: 2.5 },
    "4": { mm: 1 },
    "5": { mm: 1 },
    "6": { mm: 1 },
  },
} as const satisfies NamedTable<{ readonly mm: number }>;

/**
 * The widest opening, mm, that an enclosure of a degree of protection may have (IEC 60529, quoted).
 *
 * @param degree as on the plate: IP3X, IP42, IP4XD
 * @returns `none` where its first numeral asks for nothing
 * @example widestOpening("IP3X") // 2.5
 */
export const widestOpening = (degree: string): Result<Criterion> => {
  const numeral = degree.trim().charAt(2);
  const row = Object.entries(openings.rows).find(([name]) => name === numeral)?.[1];
  return row
    ? answer({ value: row.mm, source: openings.source })
    : refuse("none", (text) => text.standards.noOpening(degree));
};
