import type { CellValue } from "../../records/kind";
import { isBlank } from "../../records/kind";
import { seldom } from "../among/chance";
import { repeatedIn } from "../among/repeated";
import { measured } from "../among/similar";
import { type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { panelsIn, partsOf, type Reckoning, reckoningOf, rowsOf, SELDOM } from "./sameRun";

/** Readings below which a likeness tells nothing, and above which blocks are too long to be compared so. */
const LEAST = 4;
const MOST = 60;

/** The readings of some rows: of each its row and its column among those that were measured. */
interface Block {
  readonly rows: readonly number[];
  readonly columns: readonly number[];
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
    const marks = marksBy(reckoning);
    return [panelsIn(table), partsOf(table), columns.length < LEAST ? [] : rowsOf(table)].flatMap(
      (rows) =>
        nearIn(rows, reckoning, marks, told).map(({ first, then, like, expected }): Finding => {
          const count = then.rows.length;
          const at = then.rows.findIndex((_row, index) => !isLike(first, then, index, reckoning));
          const column = columns[then.columns[at] ?? 0]?.id ?? "";
          return {
            rule: "near-copy",
            weight: "query",
            ...where(table, then.rows[at] ?? 0, column),
            message: text.rules["near-copy"].message(
              rowName(table, then.rows[0] ?? 0),
              like,
              count,
              rowName(table, first.rows[0] ?? 0),
              seldom(expected),
            ),
            found: like,
          };
        }),
    );
  },
};

/** The readings of rows; undefined where they are too few or too many to be compared. */
function blockOf(rows: readonly number[], { cells }: Reckoning): Block | undefined {
  const block = { rows: [] as number[], columns: [] as number[] };
  for (const row of rows)
    for (let column = 0; column < cells.length; column++) {
      if (isBlank(cells[column]?.[row])) continue;
      if (block.rows.length === MOST) return undefined;
      block.rows.push(row);
      block.columns.push(column);
    }
  return block.rows.length < LEAST ? undefined : block;
}

interface Near {
  readonly first: Block;
  readonly then: Block;
  readonly like: number;
  /** How many such likenesses chance would make in the table. */
  readonly expected: number;
}

/** Blocks that are like an earlier one in all but one or two of their readings, and not in all. */
function nearIn(
  blocks: readonly (readonly number[])[],
  reckoning: Reckoning,
  marksOf: (block: Block) => readonly number[],
  told: Set<number>,
): Near[] {
  const pairs = (blocks.length * (blocks.length - 1)) / 2;
  const readings = blocks.flatMap((rows) => blockOf(rows, reckoning) ?? []);
  const shared = repeatedIn(marksTogether(readings, marksOf));
  if (shared.isNone) return [];
  const known = new Map<number, Block>();
  return readings.flatMap((then): Near[] => {
    let first: Block | undefined;
    for (const mark of marksOf(then)) {
      if (!shared.has(mark)) continue;
      const before = known.get(mark);
      if (before === undefined) known.set(mark, then);
      else first ??= before;
    }
    if (!first || then.rows.some((row) => told.has(row))) return [];
    const near = likeness(first, then, pairs, reckoning);
    const unlike = then.rows.length - near.like;
    if (unlike === 0 || unlike > 2 || near.expected >= SELDOM) return [];
    for (const row of then.rows) told.add(row);
    return [near];
  });
}

/** The marks of all blocks in one list: of a long table they are millions. */
function marksTogether(
  blocks: readonly Block[],
  marksOf: (block: Block) => readonly number[],
): Float64Array {
  const together = new Float64Array(
    blocks.reduce((sum, { rows }) => sum + markCount(rows.length), 0),
  );
  let at = 0;
  for (const block of blocks) {
    const marks = marksOf(block);
    together.set(marks, at);
    at += marks.length;
  }
  return together;
}

/** How many marks a block of so many readings has. */
const markCount = (readings: number): number =>
  readings < 2 * LEAST ? readings : (readings * (readings - 1)) / 2;

const isLike = (first: Block, then: Block, at: number, { cells }: Reckoning): boolean => {
  const [there, here] = [first.columns[at] ?? -1, then.columns[at] ?? -1];
  return cells[here]?.[then.rows[at] ?? -1] === cells[there]?.[first.rows[at] ?? -1];
};

function likeness(first: Block, then: Block, pairs: number, reckoning: Reckoning): Near {
  const count = then.rows.length;
  // The points of a curve follow from one another.
  const weight = reckoning.table.kind.curve ? 1 / 2 : 1;
  let [like, product] = [0, 1];
  for (let at = 0; at < count; at++)
    if (isLike(first, then, at, reckoning)) {
      like += 1;
      product *= reckoning.chance(then.rows[at] ?? 0, then.columns[at] ?? 0) ** weight;
    }
  const ways = count - like === 1 ? count : count ** 2 / 2;
  return { first, then, like, expected: product * pairs * ways };
}

/**
 * Gives a block's readings with one of them left out, or two where it has eight and more, each as a number:
 * blocks that are alike but for these share a mark.
 */
function marksBy({ cells }: Reckoning): (block: Block) => readonly number[] {
  const hashes = cells.map((column) => new Uint32Array(column.length));
  const hashOf = (row: number, column: number): number => {
    const known = hashes[column]?.[row] ?? 0;
    if (known !== 0) return known;
    const made = hash(cells[column]?.[row] ?? null);
    (hashes[column] ?? hashes[0] ?? [])[row] = made;
    return made;
  };
  return ({ rows, columns }) => {
    const count = rows.length;
    const parts = rows.map((row, at) => placed(hashOf(row, columns[at] ?? 0), at));
    const whole = parts.reduce((sum, part) => sum + part, count);
    const marks: number[] = [];
    for (let one = 0; one < count; one++) {
      const rest = whole - (parts[one] ?? 0);
      if (count < 2 * LEAST) marks.push(rest * MOST + one);
      else
        for (let other = one + 1; other < count; other++)
          marks.push((rest - (parts[other] ?? 0)) * MOST ** 2 + one * MOST + other);
    }
    return marks;
  };
}

/** A reading as a whole number of 32 bits above 0, as a rule another one for any other reading. */
function hash(value: CellValue): number {
  let mark = 17;
  if (typeof value === "number") {
    DOUBLE[0] = value + 0;
    for (const half of HALVES) mark = mixed(Math.imul(mark ^ half, 1_000_003));
  } else for (const unit of String(value)) mark = Math.imul(mark, 1_000_003) ^ unit.charCodeAt(0);
  return mark >>> 0 || 1;
}

/** A number, and its 64 bits as two numbers. */
const DOUBLE = new Float64Array(1);
const HALVES = new Uint32Array(DOUBLE.buffer);

/** Such a number at its place in a block: sums of so many, and the places that are left out, are exact. */
const placed = (mark: number, at: number): number =>
  mixed(Math.imul(mark ^ Math.imul(at + 1, 0x9e3779b1), 0x85ebca6b)) >>> 0;

/** The upper bits of a product brought down among the lower ones. */
const mixed = (product: number): number => product ^ (product >>> 15);
