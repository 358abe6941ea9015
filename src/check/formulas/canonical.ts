import { parseStructRef, tokenize } from "@borgar/fx/xlsx";
import { readArea } from "../../sheets/cells/area";
import type { TableSnapshot } from "../../sheets/snapshot";
import { addressesFrom } from "./fromItsRow";

/** One reference of a formula to its own table, or to anything else. */
export type Ref =
  | {
      readonly to: "cell";
      readonly header: string;
      /** Rows below the formula's own; negative above. */
      readonly offset: number;
      /** Whether the row is fixed by a dollar sign. */
      readonly fixed: boolean;
      readonly text: string;
    }
  | { readonly to: "column"; readonly header: string; readonly text: string }
  | {
      readonly to: "elsewhere";
      readonly text: string;
      /** Whether it goes down with each row that the formula is filled to. */
      readonly moves: boolean;
    };

/** A formula as it reads from its own row, however its references are written. */
export interface Canonical {
  /** The same for formulas that do the same from their own rows. */
  readonly text: string;
  readonly refs: readonly Ref[];
  readonly numbers: readonly number[];
  readonly words: readonly string[];
  readonly functions: readonly string[];
}

/**
 * Traces the inputs of a formula: structured references and addresses alike become columns of the table
 * and rows beside the formula's own.
 *
 * @param row the formula's row within the table's body, from 0
 */
export function canonical(formula: string, table: TableSnapshot, row: number): Canonical {
  const refs: Ref[] = [];
  const numbers: number[] = [];
  const words: string[] = [];
  const functions: string[] = [];
  const text = tokenize(formula, { withLocation: false }).map(({ type, value }) => {
    switch (type) {
      case "whitespace":
      case "newline":
        return "";
      case "func": {
        const name = value.toUpperCase().replace(/^_XLFN\.(_XLWS\.)?|^_XLDUDF_/, "");
        functions.push(name);
        return name;
      }
      case "number":
        numbers.push(Number(value));
        return String(Number(value));
      case "string":
        words.push(value.slice(1, -1).toLowerCase());
        return value.toLowerCase();
      case "structured":
      case "range":
      case "range_beam":
      case "range_named": {
        const found = type === "structured" ? ofColumns(value, table) : ofCells(value, table, row);
        refs.push(...found);
        return found.map((ref) => written(ref, row)).join(":");
      }
      default:
        return value;
    }
  });
  return { text: text.join(""), refs, numbers, words, functions };
}

const written = (ref: Ref, row: number): string =>
  ref.to === "cell"
    ? `{${ref.header}${ref.fixed ? `@${ref.text}` : ref.offset === 0 ? "" : `@${ref.offset}`}}`
    : ref.to === "column"
      ? `{all ${ref.header}}`
      : `{${ref.moves ? addressesFrom(ref.text, row) : ref.text}}`;

function ofColumns(text: string, table: TableSnapshot): Ref[] {
  const read = parseStructRef(text);
  const { columns = [], sections = [] } = read ?? {};
  if (!read || (read.table !== undefined && read.table !== "" && read.table !== table.name))
    return [elsewhere(text)];
  if (sections[0]?.toLowerCase() === "this row" || sections[0] === "@")
    return columns.map((header) => ({ to: "cell", header, offset: 0, fixed: false, text }));
  return sections.length === 0 || sections[0]?.toLowerCase() === "data"
    ? columns.map((header) => ({ to: "column", header, text }))
    : [elsewhere(text)];
}

const elsewhere = (text: string, moves = false): Ref => ({ to: "elsewhere", text, moves });

function ofCells(text: string, table: TableSnapshot, row: number): Ref[] {
  const at = text.lastIndexOf("!");
  const sheet =
    at < 0 ? table.sheet : text.slice(0, at).replace(/^'|'$/g, "").replaceAll("''", "'");
  const area = readArea(text);
  const first = table.top + 1;
  const header = (column: number) => table.headers[column - table.left];
  const outside = [elsewhere(text, area !== undefined && !/\$\d|^\D*$/.test(text.slice(at + 1)))];
  if (!area || sheet !== table.sheet) return outside;
  const { top, left, bottom, right } = area;
  if (top === first && bottom === first + table.rowCount - 1 && left === right && top < bottom) {
    const name = header(left);
    return name === undefined ? outside : [{ to: "column", header: name, text }];
  }
  if (top !== bottom || top < table.top || top > table.top + table.rowCount + 1) return outside;
  const fixed = /\$\d/.test(text.slice(at + 1));
  const ends = left === right ? [left] : [left, right];
  const names = ends.map(header);
  return names.some((name) => name === undefined)
    ? outside
    : names.map((name) => ({
        to: "cell",
        header: String(name),
        offset: top - first - row,
        fixed,
        text: text.slice(at + 1),
      }));
}
