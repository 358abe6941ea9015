import { COILS_ANSI, COILS_ANSI_AC, COILS_IEC } from "../published/breakers";
import { BY_NOMINAL, CABLES, VLF } from "../published/cables";
import { CURVES } from "../published/curves";
import { FACTORS, MAXIMUM, MINIMUM } from "../published/insulation";
import { BOLTS, PROOF } from "../published/joints";
import { CT, VT } from "../published/transformers";
import { CLASSES, FACTORY, IEC, NETA, SERIES_II } from "../published/withstand";

type Rows = readonly (readonly (number | string | undefined)[])[];

/** The tests' own tables on the sheet `Published`: each a block of columns from row 1. */
const BLOCKS: Readonly<Record<string, Rows>> = {
  factors: FACTORS,
  minimum: MINIMUM,
  maximum: MAXIMUM,
  iec: IEC,
  seriesII: SERIES_II,
  classes: CLASSES,
  neta: NETA,
  factory: FACTORY,
  cables: CABLES,
  nominal: BY_NOMINAL,
  vlf: VLF,
  coilsIec: COILS_IEC,
  coilsAnsi: COILS_ANSI,
  coilsAnsiAc: COILS_ANSI_AC,
  bolts: BOLTS,
  proof: PROOF,
  curves: CURVES,
  vt: VT,
  ...Object.fromEntries(Object.entries(CT).map(([name, rows]) => [`ct ${name}`, rows])),
};

/** First column of each block, one column left free between two. */
const first: Record<string, number> = {};
let width = 0;
for (const [name, rows] of Object.entries(BLOCKS)) {
  first[name] = width;
  width += Math.max(...rows.map((row) => row.length)) + 1;
}

/** Rows of the sheet `Published`. */
export function publishedRows(): (number | string | null)[][] {
  const depth = Math.max(...Object.values(BLOCKS).map((rows) => rows.length));
  return Array.from({ length: depth }, (_, row) => {
    const cells: (number | string | null)[] = Array(width).fill(null);
    for (const [name, rows] of Object.entries(BLOCKS))
      rows[row]?.forEach((value, at) => {
        cells[(first[name] ?? 0) + at] = value ?? null;
      });
    return cells;
  });
}

/** Letters of a column, from 0. */
export const letters = (column: number): string =>
  (column >= 26 ? letters(Math.floor(column / 26) - 1) : "") +
  String.fromCharCode(65 + (column % 26));

/** Number of rows of a block. */
export const depthOf = (block: string): number => BLOCKS[block]?.length ?? 0;

/** One column of a block, as a reference. */
export const range = (block: string, column: number): string => {
  const letter = letters((first[block] ?? Number.NaN) + column);
  return `Published!$${letter}$1:$${letter}$${depthOf(block)}`;
};

/** The value in the row with the least number in the first column that is not below the one given. */
export const rowAtLeast = (at: string, block: string, column: number): string =>
  `INDEX(${range(block, column)},COUNTIF(${range(block, 0)},"<"&${at})+1)`;

/** The value in the row whose first column holds just this. */
export const rowOf = (key: string, block: string, column: number): string =>
  `INDEX(${range(block, column)},MATCH(${key},${range(block, 0)},0))`;
