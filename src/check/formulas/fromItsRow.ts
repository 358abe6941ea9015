/** Quoted text and sheet names, what stands in brackets, functions, and addresses in turn. */
const PART =
  /"(?:[^"]|"")*"|'(?:[^']|'')*'|\[[^[\]]*\]|[A-Za-z][\w.]*(?=\()|(\$?[A-Za-z]{1,3})(\d+)(?![\w(])/g;
/** An area of several rows, which is the whole column seen from one row and less from the next. */
const AREA = /\$?[A-Za-z]{1,3}\$?(\d+):\$?[A-Za-z]{1,3}\$?(\d+)/g;

/**
 * A formula written as it reads from its own row, so that a formula filled down over a column is the same
 * text on every row. One with an area of several rows is named by its row besides.
 *
 * @param row of the formula, any count that goes up by one a row
 * @example fromItsRow("C7*$B$2", 5) // "C[2]*$B$2", and so is C8*$B$2 on row 6
 */
export function fromItsRow(formula: string, row: number): string {
  const hasArea = [...formula.matchAll(AREA)].some(([, top, bottom]) => top !== bottom);
  return `${hasArea ? `${row}: ` : ""}${addressesFrom(formula, row)}`;
}

/** The addresses of a formula as so many rows from its own; others stay. */
export const addressesFrom = (formula: string, row: number): string =>
  formula.replace(PART, (text, column, digits) =>
    column === undefined ? text : `${column}[${Number(digits) - row}]`,
  );
