import type { Column } from "../records/kind";
import type { Papers } from "../sheets/plan/plannedSheet";

/** Sizes of paper: ISO 216, and ANSI/ASME Y14.1 (A, B). */
export type Paper = "a4" | "a3" | "letter" | "tabloid";

/** How a sheet goes on paper. */
export interface PageSetUp {
  readonly paper: Paper;
  /** Pages that its columns are spread over. */
  readonly across: number;
  /** Columns at the left that stand on each page again. */
  readonly repeated: number;
}

/** Points of paper in landscape, within margins of 0.4 inch. */
const INSIDE: Readonly<Record<Paper, number>> = { a4: 784, a3: 1132, letter: 734, tabloid: 1166 };
const SIZES: Readonly<Record<Papers, readonly [small: Paper, large: Paper]>> = {
  ISO: ["a4", "a3"],
  American: ["letter", "tabloid"],
};
/** Least size of what is printed over what stands on the screen: letters of 9 points are then hardly less than 6. */
const LEAST = 0.64;

/** Columns at the left that say which row one is in. */
export const keysOf = (columns: readonly Pick<Column, "role">[]): number => {
  const other = columns.findIndex(({ role }) => role !== "key");
  return other < 0 ? columns.length : other;
};

/** A column's width on the screen, in characters: what it holds and the room beside that. */
export const widthOf = ({ width }: Pick<Column, "width">): number => width + 2;

/** A width in characters, as Excel's interface measures it: points at 7 pixels a character. */
export const points = (characters: number): number => (characters * 7 + 5) * 0.75;

const sum = (columns: readonly Pick<Column, "width">[]) =>
  columns.reduce((all, column) => all + points(widthOf(column)), 0);

type Wide = Pick<Column, "role" | "width">;

/** The column that each page begins with, besides those that stand on every page. */
function begins(columns: readonly Wide[], room: number): number[] {
  const again = sum(columns.slice(0, keysOf(columns)));
  const found = [0];
  let used = 0;
  columns.forEach((column, at) => {
    used += sum([column]);
    if (used <= room || at === 0) return;
    found.push(at);
    used = again + sum([column]);
  });
  return found;
}

/** Size of what is printed over what stands on the screen, as spreadsheets choose it: in whole per cents, never enlarged. */
function sizeOn(columns: readonly Wide[], { paper, across }: PageSetUp): number {
  const least = 10;
  for (let percent = 100; percent > least; percent--)
    if (begins(columns, (INSIDE[paper] * 100) / percent).length <= across) return percent / 100;
  return least / 100;
}

/** The smallest landscape paper, and the fewest pages side by side, that a sheet's columns can be read on. */
export function pageOf(columns: readonly Wide[], papers: Papers = "ISO"): PageSetUp {
  const [small, large] = SIZES[papers];
  const repeated = keysOf(columns);
  const widest: PageSetUp = { paper: large, across: 3, repeated };
  const pages: readonly PageSetUp[] = [
    { paper: small, across: 1, repeated: 0 },
    { paper: large, across: 1, repeated: 0 },
    { paper: large, across: 2, repeated },
  ];
  return pages.find((page) => sizeOn(columns, page) >= LEAST) ?? widest;
}

/** How many columns stand whole on the first of the pages side by side; programs differ a little in how wide a column is. */
export function firstPage(columns: readonly Wide[], papers?: Papers): number {
  const page = pageOf(columns, papers);
  const room = (INSIDE[page.paper] / sizeOn(columns, page)) * 0.85;
  return page.across === 1 ? columns.length : (begins(columns, room)[1] ?? columns.length);
}
