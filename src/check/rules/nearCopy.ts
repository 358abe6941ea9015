import type { CellValue } from "../../records/kind";
import { isBlank } from "../../records/kind";
import { seldom } from "../chance";
import { type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { measured } from "../similar";
import { partsOf, type Reckoning, reckoningOf, rowsOf, SELDOM } from "./sameRun";

/** Readings below which a likeness tells nothing, and above which blocks are too long to be compared so. */
const LEAST = 4;
const MOST = 60;

/** One reading of a block. */
interface Cell {
  readonly row: number;
  readonly column: number;
  readonly value: CellValue;
}

interface Block {
  readonly cells: readonly Cell[];
}

/** Rows, all phases of a part, or a panel's rows of a table that read as another's do but for one or two cells. */
export const nearCopy: Rule = {
  id: "near-copy",
  reads: "table",
  find: (table, { text }) => {
    const columns = measured(table);
    if (columns.length === 0) return [];
    const reckoning = reckoningOf(table);
    const told = new Set<number>();
    return [panelsIn(table), partsOf(table), rowsOf(table)].flatMap((blocks) =>
      nearIn(
        blocks.map((rows) => blockOf(rows, reckoning)),
        reckoning,
        told,
      ).map(({ first, then, unlike, expected }): Finding => {
        const at = then.cells.find(({ value }, index) => value !== first.cells[index]?.value);
        const [from, to] = [first.cells[0], then.cells[0]];
        const column = columns[at?.column ?? 0]?.id ?? "";
        return {
          rule: "near-copy",
          weight: "query",
          ...where(table, at?.row ?? 0, column),
          message: text.rules["near-copy"].message(
            rowName(table, to?.row ?? 0),
            then.cells.length - unlike,
            then.cells.length,
            rowName(table, from?.row ?? 0),
            seldom(expected),
          ),
          found: then.cells.length - unlike,
        };
      }),
    );
  },
};

/** All rows of each panel in a table, where the table has several of each. */
export function panelsIn({ rows, aside }: JudgedTable): number[][] {
  const panels = new Map<string, number[]>();
  for (const [at, { object }] of rows.entries()) {
    if (aside.has(at)) continue;
    const panel = panels.get(String(object));
    if (panel) panel.push(at);
    else panels.set(String(object), [at]);
  }
  return [...panels.values()].filter((some) => some.length > 1);
}

const blockOf = (rows: readonly number[], { columns, read }: Reckoning): Block => ({
  cells: rows.flatMap((row) =>
    columns.flatMap((_, column): Cell[] => {
      const value = read(row, column);
      return isBlank(value) ? [] : [{ row, column, value }];
    }),
  ),
});

interface Near {
  readonly first: Block;
  readonly then: Block;
  readonly unlike: number;
  /** How many such likenesses chance would make in the table. */
  readonly expected: number;
}

/** Blocks that are like an earlier one in all but one or two of their readings, and not in all. */
function nearIn(blocks: readonly Block[], reckoning: Reckoning, told: Set<number>): Near[] {
  const long = blocks.filter(({ cells }) => cells.length >= LEAST && cells.length <= MOST);
  const pairs = (blocks.length * (blocks.length - 1)) / 2;
  const known = new Map<number, Block>();
  return long.flatMap((then): Near[] => {
    const marks = marksOf(then);
    const first = marks.map((mark) => known.get(mark)).find((one) => one !== undefined);
    for (const mark of marks) if (!known.has(mark)) known.set(mark, then);
    if (!first || then.cells.some(({ row }) => told.has(row))) return [];
    const near = likeness(first, then, pairs, reckoning);
    if (near.unlike === 0 || near.unlike > 2 || near.expected >= SELDOM) return [];
    for (const { row } of then.cells) told.add(row);
    return [near];
  });
}

function likeness(first: Block, then: Block, pairs: number, { table, chance }: Reckoning): Near {
  const like = then.cells.filter(({ value }, at) => value === first.cells[at]?.value);
  const unlike = then.cells.length - like.length;
  // The points of a curve follow from one another.
  const weight = table.kind.curve ? 1 / 2 : 1;
  const ways = unlike === 1 ? then.cells.length : then.cells.length ** 2 / 2;
  const expected = like.reduce(
    (product, { row, column }) => product * chance(row, column) ** weight,
    pairs * ways,
  );
  return { first, then, unlike, expected };
}

/**
 * A block's readings with one of them left out, or two where it has eight and more, each as a number:
 * blocks that are alike but for these share a mark.
 */
function marksOf({ cells }: Block): number[] {
  const count = cells.length;
  const parts = cells.map(({ value }, at) => markOf(value, at));
  const whole = parts.reduce((sum, part) => sum + part, count);
  const marks: number[] = [];
  for (const [one, part] of parts.entries())
    if (count < 2 * LEAST) marks.push((whole - part) * MOST + one);
    else
      for (let other = one + 1; other < count; other++)
        marks.push((whole - part - (parts[other] ?? 0)) * MOST ** 2 + one * MOST + other);
  return marks;
}

/** Bits of a mark's parts: sums of so many, and the places that are left out, are exact. */
const PART = 2 ** 32;

/** A reading at its place in a block as a whole number, as a rule another one for any other reading or place. */
function markOf(value: CellValue, at: number): number {
  let mark = at + 1;
  for (const unit of String(value)) mark = (mark * 1_000_003 + unit.charCodeAt(0)) % PART;
  return (mark * 48_271) % PART;
}
