import type { Basis } from "./criterion";

/**
 * Editions of which the figures are known here, the current one first. Of a document whose latest edition
 * has not been read the latest that has stands first, and its source says so.
 */
export const EDITIONS = {
  "IEC 62271-1": ["2017", "2007"],
  "IEC 60502-2": ["2014", "2005"],
  "ANSI/NETA": ["ATS-2025", "MTS-2019", "MTS-2015"],
} as const;

export type Document = keyof typeof EDITIONS;
export type EditionOf<D extends Document> = (typeof EDITIONS)[D][number];

export const PURPOSES = ["acceptance", "maintenance"] as const;
export type Purpose = (typeof PURPOSES)[number];

/** What a project goes by: the basis, what the tests are for, and editions that it asks for. A lineup is one. */
export interface Chosen {
  readonly basis: Basis;
  /** Acceptance of new gear where nothing is said. */
  readonly purpose?: Purpose;
  readonly editions?: { readonly [D in Document]?: EditionOf<D> };
}

/** The edition of a document that applies: the one asked for, else the current one for the purpose. */
export const editionOf = <D extends Document>(document: D, chosen: Chosen): EditionOf<D> => {
  const asked = chosen.editions?.[document];
  if (asked) return asked;
  const known: readonly string[] = EDITIONS[document];
  // NETA has a standard of its own for each purpose.
  const current =
    document === "ANSI/NETA" && chosen.purpose === "maintenance"
      ? known.find((edition) => edition.startsWith("MTS"))
      : known[0];
  return current as EditionOf<D>;
};
