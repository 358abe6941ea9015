import type { Lineup } from "../../lineup/lineup";
import type { Column, Reference, Row } from "../../records/kind";
import { onceForAlike } from "../../records/onceForAlike";

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

/** The formula that a column's cells hold, by row: the same in all of them; undefined where a cell holds a value. */
export const formulaIn = (
  { own, formula }: Column,
  ref: Reference,
  lineup: Lineup,
): ((row: Row) => string | undefined) => {
  const text = formula?.(ref, lineup);
  return text === undefined || !own
    ? () => text
    : onceForAlike((row) => (own(row, lineup) ? undefined : text));
};

/** Brackets, hash and apostrophe are escaped by an apostrophe in a structured reference. */
const escaped = (header: string) => header.replace(/[[\]#']/g, "'$&");
