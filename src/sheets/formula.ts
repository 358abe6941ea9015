import type { Lineup } from "../lineup/lineup";
import type { Column, Reference, Row } from "../records/kind";

/** Refers to the columns of one table by structured reference, in the form that a file stores. */
export function tableReference(table: string, columns: readonly Column[]): Reference {
  const header = new Map(columns.map((column) => [column.id, escaped(column.header)]));
  const named = (id: string) => {
    const text = header.get(id);
    if (text === undefined) throw new Error(`no column "${id}" in ${table}`);
    return text;
  };
  return Object.assign((id: string) => `${table}[[#This Row],[${named(id)}]]`, {
    all: (id: string) => `${table}[${named(id)}]`,
    span: (from: string, to: string) => `${table}[[#This Row],[${named(from)}]:[${named(to)}]]`,
  });
}

/** The formula that a column's cell holds in this row; undefined where it holds a value. */
export const cellFormula = (
  column: Column,
  row: Row,
  ref: Reference,
  lineup: Lineup,
): string | undefined => (column.own?.(row, lineup) ? undefined : column.formula?.(ref, lineup));

/** Brackets, hash and apostrophe are escaped by an apostrophe in a structured reference. */
const escaped = (header: string) => header.replace(/[[\]#']/g, "'$&");
