import type { FindingsText } from "../../messages/messages";
import { chanceIn, seldom, type Tally, tallyOf, together } from "../chance";
import { type Rule, rowName, said, where } from "../context";
import type { Finding } from "../finding";
import { measured } from "../similar";
import { panelsIn } from "./nearCopy";
import { partsOf, type Reckoning, reckoningOf, SELDOM } from "./sameRun";

/** Rows that are all alike are asked about from so many on, beside so many others that show how they differ. */
const ROWS = 3;
const OTHERS = 3;
/** Above `SELDOM` and up to here it is worth a note, and no more. */
const UNLIKELY = 0.02;
/** A column in which phases are alike more often than this tells nothing. */
const TELLING = 0.1;

/** All phases of a part, or all rows of a panel, at one reading. */
export const samePhases: Rule = {
  id: "same-phases",
  reads: "table",
  find: (table, { text }) => {
    if (measured(table).length === 0) return [];
    const reckoning = reckoningOf(table);
    const told = new Set<number>();
    return [partsOf(table), panelsIn(table)].flatMap((blocks) =>
      alikeIn(blocks, reckoning).flatMap((alike): Finding[] => {
        const [row = 0] = alike.rows;
        if (told.has(row)) return [];
        told.add(row);
        return [finding(reckoning, alike, text)];
      }),
    );
  },
};

interface Alike {
  readonly rows: readonly number[];
  /** Columns, by their place among those measured. */
  readonly columns: readonly number[];
  /** How many such likenesses chance would make in the table. */
  readonly expected: number;
}

function alikeIn(blocks: readonly (readonly number[])[], reckoning: Reckoning): Alike[] {
  const { columns, read } = reckoning;
  const long = blocks.filter(({ length }) => length >= ROWS);
  if (long.length <= OTHERS) return [];
  const counted = columns.map((_, column) => countIn(long, column, reckoning));
  return long.flatMap((rows): Alike[] => {
    const alike = [...columns.keys()].filter((column) => {
      const [first, ...others] = rows.map((row) => read(row, column));
      return typeof first === "number" && others.every((one) => one === first);
    });
    const filled = [...columns.keys()].filter((column) => read(rows[0] ?? -1, column) !== null);
    // Rows that are the same in all of several columns are told as copies.
    if (alike.length === 0 || (filled.length > 1 && alike.length === filled.length)) return [];
    const telling = alike.flatMap((column) => {
      const chance = chanceBy(counted[column], rows, column, reckoning) ** (rows.length - 1);
      return chance < TELLING ? [{ column, chance }] : [];
    });
    const expected = telling.reduce(
      (product, { chance }) => product * chance,
      long.length * filled.length,
    );
    return expected < UNLIKELY
      ? [{ rows, columns: telling.map(({ column }) => column), expected }]
      : [];
  });
}

/** The blocks that have enough numbers in a column: how many, of how many of them all rows are alike, and how near they lie. */
interface Counted {
  readonly blocks: number;
  readonly alike: number;
  readonly tally: Tally;
}

function countIn(
  blocks: readonly (readonly number[])[],
  column: number,
  { grains, read }: Reckoning,
): Counted | undefined {
  const grain = grains[column];
  if (!grain) return undefined;
  const filled = blocks
    .map((rows) => rows.map((row) => read(row, column)).filter((one) => typeof one === "number"))
    .filter((values) => values.length >= ROWS);
  return {
    blocks: filled.length,
    alike: filled.filter((values) => values.every((one) => one === values[0])).length,
    tally: together(filled.map((values) => tallyOf(values, grain))),
  };
}

/** How likely two rows of a block, of which all are alike, read the same, by the other blocks. */
function chanceBy(
  counted: Counted | undefined,
  own: readonly number[],
  column: number,
  { grains, read }: Reckoning,
): number {
  const grain = grains[column];
  const others = (counted?.blocks ?? 0) - 1;
  if (!counted || !grain || others < OTHERS) return 1;
  const mine = tallyOf(
    own.map((row) => Number(read(row, column))),
    grain,
  );
  // Blocks of which all rows are alike, as many as there are, excuse this one.
  const same = (counted.alike - 1) / others;
  return Math.max(chanceIn(together([counted.tally], [mine])), same ** (1 / (own.length - 1)));
}

function finding(
  { table, columns, read }: Reckoning,
  { rows, columns: alike, expected }: Alike,
  text: FindingsText,
): Finding {
  const [row = 0] = rows;
  const named = alike.map((column) => ({
    header: columns[column]?.header ?? "",
    value: said(read(row, column)),
  }));
  return {
    rule: "same-phases",
    weight: expected < SELDOM ? "query" : "note",
    ...where(table, row, columns[alike[0] ?? 0]?.id ?? ""),
    message: text.rules["same-phases"].message(
      rowName(table, row),
      rows.length - 1,
      named,
      seldom(expected),
    ),
    found: named[0]?.value,
  };
}
