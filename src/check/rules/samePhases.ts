import type { FindingsText } from "../../messages/messages";
import { chanceIn, seldom, tallyOf, together } from "../among/chance";
import { measured } from "../among/similar";
import { type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";
import { panelsIn, partsOf, type Reckoning, reckoningOf, SELDOM } from "./sameRun";

/** Rows that are all alike are asked about from so many on, beside so many others that show how they differ. */
const ROWS = 3;
const OTHERS = 3;
/** Above `SELDOM` and up to here it is worth a note, and no more. */
export const UNLIKELY = 0.02;
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
  const alike = new Map<readonly number[], AlikeIn[]>();
  for (const column of columns.keys())
    for (const [rows, chance] of alikeInColumn(long, column, reckoning))
      alike.set(rows, [...(alike.get(rows) ?? []), { column, chance }]);
  return [...alike].flatMap(([rows, some]): Alike[] => {
    const filled = [...columns.keys()].filter((column) => read(rows[0] ?? -1, column) !== null);
    // Rows that are the same in all of several columns are told as copies.
    if (filled.length > 1 && some.length === filled.length) return [];
    const telling = some.filter(({ chance }) => chance < TELLING);
    const expected = telling.reduce(
      (product, { chance }) => product * chance,
      long.length * filled.length,
    );
    return expected < UNLIKELY
      ? [{ rows, columns: telling.map(({ column }) => column), expected }]
      : [];
  });
}

interface AlikeIn {
  readonly column: number;
  /** How likely all rows of the block read the same, by how those of other blocks differ. */
  readonly chance: number;
}

/** The blocks of which all rows read the same in a column, with how likely each is. */
function alikeInColumn(
  blocks: readonly (readonly number[])[],
  column: number,
  { grains, read }: Reckoning,
): (readonly [rows: readonly number[], chance: number])[] {
  const grain = grains[column];
  const [same, unlike]: [(readonly number[])[], number[][]] = [[], []];
  for (const rows of blocks) {
    const values = rows.map((row) => read(row, column)).filter((one) => typeof one === "number");
    if (values.length < rows.length) continue;
    if (values.every((one) => one === values[0])) same.push(rows);
    else unlike.push(values);
  }
  if (!grain || same.length === 0 || unlike.length < OTHERS) return [];
  const chance = chanceIn(together(unlike.map((values) => tallyOf(values, grain))));
  // The other blocks of which all rows are alike, as many as there are, excuse each.
  const share = (same.length - 1) / (same.length - 1 + unlike.length);
  return same.map((rows) => [rows, Math.max(share, chance ** (rows.length - 1))] as const);
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
