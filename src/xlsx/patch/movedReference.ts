import { tokenize } from "@borgar/fx/xlsx";
import { LAST_ROW, readArea } from "../../sheets/cells/area";

/** Rows that are put into a sheet: before which one, from 0, and how many. */
export interface Insertion {
  readonly sheet: string;
  readonly at: number;
  readonly count: number;
}

const REFERENCES: ReadonlySet<string> = new Set(["range", "range_beam", "range_ternary"]);

/**
 * A formula after rows were put into a sheet: what refers to cells from there on refers to them where they
 * now are; what reaches over the place reaches further.
 *
 * @param home sheet that the formula stands on
 */
export function movedFormula(
  formula: string,
  home: string | undefined,
  insertion: Insertion,
): string {
  if (!/\d/.test(formula)) return formula;
  return tokenize(formula, { withLocation: false, mergeRefs: true })
    .map(({ type, value }) =>
      REFERENCES.has(type) && isOn(value, home, insertion.sheet)
        ? movedReference(value, insertion)
        : value,
    )
    .join("");
}

/** Whether a reference is to a sheet: by its name, or from the sheet itself. */
function isOn(reference: string, home: string | undefined, sheet: string): boolean {
  const end = reference.lastIndexOf("!");
  if (end < 0) return home === sheet;
  const name = reference.slice(0, end);
  const said = name.startsWith("'") ? name.slice(1, -1).replaceAll("''", "'") : name;
  return said.toLowerCase() === sheet.toLowerCase();
}

const ROW = /(\$?[A-Za-z]{1,3}\$?|\$|^|:)(\d+)/g;

/** A reference whose sheet has got rows. */
export function movedReference(reference: string, { at, count }: Insertion): string {
  const end = reference.lastIndexOf("!") + 1;
  const cells = reference.slice(end).replace(ROW, (_text, before: string, digits: string) => {
    const row = Number(digits);
    return before + (row > at ? Math.min(row + count, LAST_ROW + 1) : row);
  });
  return reference.slice(0, end) + cells;
}

/** Areas with blanks between them, after their sheet has got rows. */
export const movedAreas = (areas: string, insertion: Insertion): string =>
  areas
    .split(/(\s+)/)
    .map((area) => (readArea(area) ? movedReference(area, insertion) : area))
    .join("");
