import { writeXlsx } from "hucre/xlsx";
import { functions } from "../../src/functions/catalogue";
import type { CellValue } from "../../src/records/kind";
import { type Argument, type Case, FUNCTION_CASES, isWord } from "./functionCases";
import { NATIVES } from "./natives";
import { letters, publishedRows } from "./publishedSheet";
import { STEPPED } from "./stepped";

/** What one worksheet function gives for each of its cases; an error is its code. */
export type Outcomes = Readonly<Record<string, readonly CellValue[]>>;

/** What the program computes. */
export const ourOutcomes = (): Outcomes =>
  Object.fromEntries(
    Object.entries(FUNCTION_CASES).map(([name, cases]) => [
      name,
      cases.map((args) => {
        const found = functions[name]?.(...(args.map(given) as never[]));
        const cell = Array.isArray(found) ? found[0]?.[0] : found;
        return typeof cell === "object" && cell !== null
          ? (cell as { code: string }).code
          : (cell as CellValue);
      }),
    ]),
  );

/** An argument as Excel hands it over. */
const given = (argument: Argument): unknown =>
  isWord(argument) ? argument.word : Array.isArray(argument) ? [argument] : [[argument]];

/** A workbook with a sheet for each function: a case a row, its cells first, then steps, then the outcome. */
export function functionBook(): Promise<Uint8Array> {
  const sheets = Object.entries(FUNCTION_CASES).map(([name, cases]) => {
    const formulas = new Map<string, { type: "formula"; formula: string; value: null }>();
    const rows = cases.map((args, at) => {
      const { cells, references } = laidOut(args, at);
      let free = cells.length + 1;
      const put = (formula: string): string => {
        formulas.set(`${at},${free}`, { type: "formula", formula, value: null });
        free += 1;
        return `${letters(free - 1)}${at + 1}`;
      };
      const native = NATIVES[name]?.(...(references as string[]));
      const outcome = native ?? STEPPED[name]?.(put, ...(references as string[]));
      if (outcome === undefined) throw new Error(`no native formula for ${name}`);
      // The outcome stands first, where a reader finds it whatever the number of steps.
      formulas.set(`${at},0`, { type: "formula", formula: outcome, value: null });
      return [null, ...cells];
    });
    return { name, rows, cells: formulas };
  });
  return writeXlsx({ sheets: [...sheets, { name: "Published", rows: publishedRows() }] });
}

/** The cells of a case from column B on, and how a native formula refers to each argument. */
function laidOut(args: Case, at: number) {
  const cells: CellValue[] = [];
  const references = args.map((argument) => {
    if (isWord(argument)) return argument.word === undefined ? undefined : `"${argument.word}"`;
    const list = Array.isArray(argument) ? argument : [argument as CellValue];
    const [from, to] = [cells.length + 1, cells.length + list.length];
    cells.push(...list);
    const first = `${letters(from)}${at + 1}`;
    return list.length === 1 ? first : `${first}:${letters(to)}${at + 1}`;
  });
  return { cells, references };
}

/** What a judge's sheets hold: the first cell of each case's row. */
export const outcomesOf = (
  sheets: Readonly<Record<string, readonly (readonly unknown[])[]>>,
): Outcomes =>
  Object.fromEntries(
    Object.entries(FUNCTION_CASES).map(([name, cases]) => [
      name,
      cases.map((_, at) => (sheets[name]?.[at]?.[0] ?? null) as CellValue),
    ]),
  );

/** Where two computations differ: beyond 1e-9 relative for numbers, at all for text; an error must meet an error. */
export const outcomeDifferences = (ours: Outcomes, theirs: Outcomes, name: string): string[] =>
  (ours[name] ?? []).flatMap((mine, at) => {
    const other = theirs[name]?.[at] ?? null;
    return alike(mine, other)
      ? []
      : [
          `${name} case ${at}: ${mine} against ${other} for ${JSON.stringify(FUNCTION_CASES[name]?.[at])}`,
        ];
  });

const alike = (one: CellValue, other: CellValue): boolean => {
  if (isErrorCode(one) || isErrorCode(other)) return isErrorCode(one) && isErrorCode(other);
  return typeof one === "number" && typeof other === "number"
    ? Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other))
    : (one || null) === (other || null);
};

export const isErrorCode = (value: CellValue): boolean =>
  typeof value === "string" && value.startsWith("#");
