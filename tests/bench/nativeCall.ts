import { type AstExpression, parse, tokenize } from "@borgar/fx";
import * as formulajs from "@formulajs/formulajs";
import type { CellValue } from "../../src/records/kind";
import { type Case, isWord } from "../judge/functionCases";
import { NATIVES } from "../judge/natives";
import { letters, publishedRows } from "../judge/publishedSheet";
import { STEPPED } from "../judge/stepped";

/** A native formula as a JavaScript function over its cells. */
export type NativeCall = (cells: readonly CellValue[]) => unknown;

/**
 * The native formula of a worksheet function, built up from the functions of a general-purpose formula
 * library: every function of the formula a call to the library, sums, products and powers too (SUM,
 * PRODUCT, POWER, CONCATENATE). What the library has no function for is JavaScript's own: comparison,
 * division, and IF, which computes one side alone as a spreadsheet does.
 */
export function nativeCall(name: string, args: Case): NativeCall {
  let free = 0;
  const named = new Map<string, string>();
  const references = args.map((argument) => {
    if (isWord(argument)) return argument.word === undefined ? undefined : `"${argument.word}"`;
    const width = Array.isArray(argument) ? argument.length : 1;
    const from = free;
    for (; free < from + width; free++) named.set(`${letters(free)}1`, `cells[${free}]`);
    return width === 1 ? `${letters(from)}1` : `${letters(from)}1:${letters(free - 1)}1`;
  });
  const steps: string[] = [];
  const put = (formula: string): string => {
    const cell = `${letters(free)}1`;
    steps.push(`const ${cell} = ${code(formula)};`);
    named.set(cell, cell);
    free += 1;
    return cell;
  };
  const code = (formula: string) => written(parse(tokenize(formula)) as AstExpression, named);
  const given = references as string[];
  const formula = NATIVES[name]?.(...given) ?? STEPPED[name]?.(put, ...given);
  if (formula === undefined) throw new Error(`${name} has no native formula`);
  const body = `${steps.join("\n")}\nreturn ${code(formula)};`;
  const make = new Function("F", "published", `return (cells) => {${body}};`);
  return make(formulajs, PUBLISHED) as NativeCall;
}

const PUBLISHED: Record<string, CellValue[]> = {};
const rows = publishedRows();
for (let column = 0; column < (rows[0]?.length ?? 0); column++)
  PUBLISHED[letters(column)] = rows.map((row) => row[column] ?? null);

/** A formula's expression in JavaScript. */
function written(node: AstExpression, named: ReadonlyMap<string, string>): string {
  const inner = (child: AstExpression | null | undefined): string =>
    child ? written(child, named) : "undefined";
  switch (node.type) {
    case "Literal":
      return JSON.stringify(node.value);
    case "ReferenceIdentifier":
      return reference(node.value, named);
    case "UnaryExpression":
      return `(${node.operator}(${inner(node.arguments[0])}))`;
    case "BinaryExpression": {
      const [a, b] = node.arguments.map(inner);
      const call = FUNCTIONS[node.operator];
      if (call) return `F.${call}(${a},${b})`;
      if (node.operator === "-") return `F.SUM(${a},-(${b}))`;
      return `(${a} ${OPERATORS[node.operator] ?? node.operator} ${b})`;
    }
    case "CallExpression": {
      const name = "name" in node.callee ? String(node.callee.name) : "";
      const args = node.arguments.map(inner);
      if (name === "IF") return `(${args[0]} ? ${args[1]} : ${args[2]})`;
      if (name === "SUMPRODUCT") throw new Error("an array expression");
      // The library's INDEX takes a single row as a matrix of one.
      if (name === "INDEX" && args.length === 3) return `F.INDEX([${args[0]}],${args.slice(1)})`;
      return `F.${name}(${args.join(",")})`;
    }
    default:
      throw new Error(`no JavaScript for ${node.type}`);
  }
}

const OPERATORS: Readonly<Record<string, string>> = {
  "=": "===",
  "<>": "!==",
};

const FUNCTIONS: Readonly<Record<string, string>> = {
  "+": "SUM",
  "*": "PRODUCT",
  "^": "POWER",
  "&": "CONCATENATE",
};

function reference(text: string, named: ReadonlyMap<string, string>): string {
  const column = /^Published!\$([A-Z]+)\$1:\$[A-Z]+\$(\d+)$/.exec(text);
  if (column) {
    const key = `${column[1]}1:${column[2]}`;
    PUBLISHED[key] ??= (PUBLISHED[column[1] ?? ""] ?? []).slice(0, Number(column[2]));
    return `published[${JSON.stringify(key)}]`;
  }
  const [from = "", to] = text.split(":");
  const cells = [...named];
  const at = (cell: string) => cells.findIndex(([name]) => name === cell);
  if (to === undefined) return named.get(from) ?? text;
  const [first, last] = [at(from), at(to)];
  const run = cells.slice(first, last + 1).map(([, value]) => value);
  return run[0]?.startsWith("cells[") ? `cells.slice(${first}, ${last + 1})` : `[${run.join(",")}]`;
}
