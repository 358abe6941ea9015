import { type AstExpression, parse, parseStructRef, tokenize } from "@borgar/fx/xlsx";
import { functions } from "../../src/functions/catalogue";
import type { CellValue } from "../../src/records/kind";
import { a1 } from "../../src/sheets/cells/address";
import { readArea } from "../../src/sheets/cells/area";

/** An Excel error inside a formula. */
export interface FormulaError {
  readonly code: string;
}

export type Value = CellValue | FormulaError;
type Many = readonly Value[];

/** Where a formula stands: the cell of its row in a column, and the whole column, by header. */
export interface Place {
  cell(header: string): Value;
  column(header: string): Many;
  /** The row's cells from one column to another. */
  span(from: string, to: string): Many;
  /** A cell of the sheet, by its address. */
  address?(address: string): Value;
}

/**
 * Computes a stored formula as Excel would, as far as the record tables' formulas go: IF, OR, AND, NOT,
 * ISNUMBER, N, IFERROR, TRIM, LOWER, SUBSTITUTE, VALUE, SEARCH, LEFT, MATCH, INDEX, ROW, COLUMN, ADDRESS, COUNT, ABS, MIN, MAX, AGGREGATE(14 or 15,6,…,k), arithmetic, comparison, structured references, and our
 * worksheet functions through their catalogue.
 */
export function computeFormula(formula: string, place: Place): Value {
  const found = evaluate(parsed(formula), place);
  if (Array.isArray(found)) throw new Error(`${formula} gives a range`);
  // Excel shows a reference to an empty cell as 0.
  return (found as Value) ?? 0;
}

/** A text read once, however many rows have it. */
function readOnce<T>(read: (text: string) => T): (text: string) => T {
  const known = new Map<string, T>();
  return (text) => {
    if (!known.has(text)) known.set(text, read(text));
    return known.get(text) as T;
  };
}

const parsed = readOnce((formula) => parse(tokenize(formula)) as AstExpression);
const reference = readOnce((text) => parseStructRef(text) ?? {});

function evaluate(node: AstExpression, place: Place): Value | Many {
  switch (node.type) {
    case "Literal":
      return node.value as CellValue;
    case "ReferenceIdentifier":
      return referred(node.value, place);
    case "UnaryExpression":
      return each(
        ["-" === node.operator ? 0 : unknown(node.operator), arg(node, 0, place)],
        (a, b) => arithmetic("-", a, b),
      );
    case "BinaryExpression":
      return each([arg(node, 0, place), arg(node, 1, place)], (a, b) =>
        operate(node.operator, a, b),
      );
    case "CallExpression":
      return call(node, place);
    case "ArrayExpression":
      return node.elements.flat().map((one) => single({ arguments: [one] }, 0, place));
    default:
      return unknown(node.type);
  }
}

type WithArguments = { readonly arguments: readonly (AstExpression | null)[] };

const arg = (node: WithArguments, at: number, place: Place): Value | Many => {
  const found = node.arguments[at];
  return found ? evaluate(found, place) : null;
};

const single = (node: WithArguments, at: number, place: Place): Value => {
  const found = arg(node, at, place);
  return Array.isArray(found) ? unknown("a range in a cell's place") : (found as Value);
};

function referred(text: string, place: Place): Value | Many {
  if (place.address && /^[A-Z]+[0-9]+$/.test(text)) return place.address(text);
  const { columns = [], sections = [] } = reference(text);
  const [header] = columns;
  const [from, to] = columns;
  if (columns.length === 2 && sections[0] === "this row" && from && to) return place.span(from, to);
  if (columns.length !== 1 || header === undefined) return unknown(text);
  if (sections.length === 0) return place.column(header);
  return sections[0] === "this row" ? place.cell(header) : unknown(text);
}

/** Applies an operator cell by cell, a single value standing beside every cell of a range. */
function each([a, b]: readonly (Value | Many)[], f: (a: Value, b: Value) => Value): Value | Many {
  const length = [a, b].map((one) => (Array.isArray(one) ? one.length : 0));
  const most = Math.max(...length);
  const at = (one: Value | Many | undefined, i: number) =>
    (Array.isArray(one) ? one[i] : one) as Value;
  return most === 0
    ? f(a as Value, b as Value)
    : Array.from({ length: most }, (_, i) => f(at(a, i), at(b, i)));
}

function operate(operator: string, a: Value, b: Value): Value {
  if (isError(a)) return a;
  if (isError(b)) return b;
  if (operator === "&") return `${a ?? ""}${b ?? ""}`;
  if ("+-*/".includes(operator)) return arithmetic(operator, a, b);
  const order = compare(a, b);
  const outcomes: Record<string, boolean> = {
    "=": order === 0,
    "<>": order !== 0,
    "<": order < 0,
    ">": order > 0,
    "<=": order <= 0,
    ">=": order >= 0,
  };
  return outcomes[operator] ?? unknown(operator);
}

function arithmetic(operator: string, left: Value, right: Value): Value {
  const [a, b] = [numeric(left), numeric(right)];
  if (typeof a !== "number") return a;
  if (typeof b !== "number") return b;
  if (operator === "/" && b === 0) return { code: "#DIV/0!" };
  const value = { "+": a + b, "-": a - b, "*": a * b, "/": a / b }[operator] ?? Number.NaN;
  return Number.isFinite(value) ? value : { code: "#NUM!" };
}

/** A value where arithmetic asks for a number: text that is one counts, blanks are 0. */
function numeric(value: Value): number | FormulaError {
  if (isError(value)) return value;
  if (typeof value !== "string") return Number(value);
  return value.trim() !== "" && Number.isFinite(Number(value))
    ? Number(value)
    : { code: "#VALUE!" };
}

/** Excel's order: numbers before text before booleans; text without case; blanks as what they stand beside. */
function compare(left: CellValue, right: CellValue): number {
  const fill = (one: CellValue, other: CellValue) =>
    one ?? (typeof other === "string" ? "" : typeof other === "boolean" ? false : 0);
  const [a, b] = [fill(left, right), fill(right, left)];
  const rank = (value: CellValue) => ["number", "string", "boolean"].indexOf(typeof value);
  if (rank(a) !== rank(b)) return rank(a) - rank(b);
  if (typeof a === "string")
    return a.toLowerCase() === String(b).toLowerCase() ? 0 : a < b ? -1 : 1;
  return Number(a) - Number(b);
}

function call(node: AstExpression & { type: "CallExpression" }, place: Place): Value | Many {
  const name = "name" in node.callee ? String(node.callee.name) : unknown("a call of no name");
  const value = (at: number) => single(node, at, place);
  switch (name) {
    case "IF": {
      const test = truth(value(0));
      return isError(test) ? test : value(test ? 1 : 2);
    }
    case "IFERROR": {
      const tried = value(0);
      return isError(tried) ? value(1) : tried;
    }
    case "AND":
    case "OR": {
      const tests = node.arguments.map((_, at) => truth(value(at)));
      const error = tests.find(isError);
      return error ?? (name === "AND" ? tests.every(Boolean) : tests.some(Boolean));
    }
    case "NOT": {
      const test = truth(value(0));
      return isError(test) ? test : !test;
    }
    case "SUMPRODUCT": {
      const cells = [arg(node, 0, place)].flat();
      const error = cells.find(isError);
      return (
        error ?? cells.reduce((sum: number, one) => sum + (typeof one === "number" ? one : 0), 0)
      );
    }
    case "ISNUMBER": {
      const of = arg(node, 0, place);
      return Array.isArray(of) ? of.map((one) => typeof one === "number") : typeof of === "number";
    }
    case "N": {
      const of = value(0);
      return isError(of) || typeof of === "number" ? of : of === true ? 1 : 0;
    }
    case "LOWER": {
      const of = value(0);
      return isError(of) ? of : String(of ?? "").toLowerCase();
    }
    case "SUBSTITUTE": {
      const of = value(0);
      return isError(of) ? of : String(of ?? "").replaceAll(String(value(1)), String(value(2)));
    }
    case "LEFT": {
      const of = value(0);
      return isError(of) ? of : String(of ?? "").slice(0, Number(value(1)));
    }
    case "MATCH": {
      const of = value(0);
      if (isError(of)) return of;
      const at = [arg(node, 1, place)].flat().indexOf(of);
      return at < 0 ? { code: "#N/A" } : at + 1;
    }
    case "INDEX": {
      const at = value(1);
      return isError(at) ? at : ([arg(node, 0, place)].flat()[Number(at) - 1] ?? null);
    }
    case "ROW":
    case "COLUMN": {
      const [of] = node.arguments;
      const at = of?.type === "ReferenceIdentifier" ? readArea(of.value) : unknown(name);
      return name === "ROW" ? (at?.top ?? 0) + 1 : (at?.left ?? 0) + 1;
    }
    case "ADDRESS":
      return a1(Number(value(0)) - 1, Number(value(1)) - 1);
    case "SEARCH": {
      const [part, of] = [value(0), value(1)];
      if (isError(part) || isError(of)) return { code: "#VALUE!" };
      const at = String(of ?? "")
        .toLowerCase()
        .indexOf(String(part ?? "").toLowerCase());
      return at < 0 ? { code: "#VALUE!" } : at + 1;
    }
    case "TRIM": {
      const of = value(0);
      return isError(of)
        ? of
        : String(of ?? "")
            .replace(/^ +| +$/g, "")
            .replace(/ +/g, " ");
    }
    case "MAX":
    case "MIN": {
      const cells = node.arguments.map((_, at) => value(at));
      const numbers = cells.filter((one) => typeof one === "number");
      const error = cells.find(isError);
      return error ?? (numbers.length > 0 ? Math[name === "MAX" ? "max" : "min"](...numbers) : 0);
    }
    case "_xlfn.AGGREGATE": {
      const [way, kth] = [value(0), Number(value(3))];
      if ((way !== 14 && way !== 15) || value(1) !== 6) return unknown("another AGGREGATE");
      const numbers = [arg(node, 2, place)].flat().filter((one) => typeof one === "number");
      numbers.sort((a, b) => (way === 15 ? a - b : b - a));
      return numbers[kth - 1] ?? { code: "#NUM!" };
    }
    case "VALUE": {
      const of = String(value(0) ?? "").trim();
      return /^-?\d+(?:\.\d+)?$/.test(of) ? Number(of) : { code: "#VALUE!" };
    }
    case "COUNT":
      return [arg(node, 0, place)].flat().filter((one) => typeof one === "number").length;
    case "ABS": {
      const of = numeric(value(0));
      return isError(of) ? of : Math.abs(of);
    }
    default:
      return ours(
        name,
        node.arguments.map((_, at) => arg(node, at, place)),
      );
  }
}

/** A worksheet function of ours, called as Excel calls it: every cell as a range of one, cells side by side as a row. */
function ours(name: string, args: readonly (Value | Many)[]): Value | Many {
  const [, plain] = /^_xldudf_GEAR_([A-Z]+)$/.exec(name) ?? [];
  const implementation = functions[plain ?? ""] ?? unknown(name);
  const given = args.map((one) => (Array.isArray(one) ? [one] : [[one]]));
  const found = implementation(...(given as never[])) as Value | Value[][];
  if (Array.isArray(found) && (found[0]?.length ?? 0) > 1) return found[0] as Many;
  const cell = Array.isArray(found) ? found[0]?.[0] : found;
  return cell === undefined ? unknown(`${name} without a cell`) : cell;
}

function truth(value: Value): boolean | FormulaError {
  if (isError(value)) return value;
  return typeof value === "string" ? { code: "#VALUE!" } : Boolean(value);
}

export const isError = (value: unknown): value is FormulaError =>
  typeof value === "object" && value !== null && "code" in value;

const unknown = (what: string): never => {
  throw new Error(`the tests' evaluator does not know ${what}`);
};
