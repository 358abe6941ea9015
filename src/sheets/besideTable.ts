import type { CellValue } from "../records/kind";
import { a1 } from "./cells/address";
import { type Area, readArea } from "./cells/area";

/** A cell that is put beside a table of somebody's own. */
export interface BesideCell {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
  /** As a file stores it, without the equals sign. */
  readonly formula?: string;
}

/** Cells that are put beside a table of somebody's own, and what they shall look like. */
export interface BesideTable {
  readonly sheet: string;
  readonly area: Area;
  readonly cells: readonly BesideCell[];
  /** Column by column of the area, or row by row where `across`: the cells of the table that these look like. */
  readonly like: readonly Area[];
  readonly across: boolean;
}

/** The names in the workbook by which such cells are found again, wherever they have moved. */
const NAME = /^GearResults\d+$/i;

export const isBesideName = (name: string): boolean => NAME.test(name);

/** So many names that the workbook does not have yet. */
export function freeBesideNames(taken: readonly string[], count: number): string[] {
  const known = new Set(taken.map((name) => name.toLowerCase()));
  const names: string[] = [];
  for (let number = 1; names.length < count; number++)
    if (!known.has(`gearresults${number}`)) names.push(`GearResults${number}`);
  return names;
}

/** A reference to an area as a name of the workbook holds it. */
export const besideReference = ({
  sheet,
  area: { top, left, bottom, right },
}: Pick<BesideTable, "sheet" | "area">): string => {
  const fixed = (row: number, column: number) =>
    a1(row, column).replace(/^([A-Z]+)(\d+)$/, "$$$1$$$2");
  return `'${sheet.replaceAll("'", "''")}'!${fixed(top, left)}:${fixed(bottom, right)}`;
};

/** The sheet and area that such a name refers to; undefined where they are gone. */
export const besideArea = (
  reference: string,
): { readonly sheet: string; readonly area: Area } | undefined => {
  const [, quoted, plain, address = ""] =
    /^=?(?:'((?:[^']|'')+)'|([^'!]+))!([^!]+)$/.exec(reference.trim()) ?? [];
  const area = address.includes("#REF") ? undefined : readArea(address);
  const sheet = quoted?.replaceAll("''", "'") ?? plain;
  return area && sheet !== undefined ? { sheet, area } : undefined;
};
