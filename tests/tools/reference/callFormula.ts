import { type AstExpression, parse, tokenize } from "@borgar/fx";
import { functions } from "../../../src/functions/catalogue";

/**
 * Computes a call of one worksheet function as a cell would hold it, its arguments written out.
 *
 * @returns the cell: a number, text, or an error with its code and sentence
 * @throws where the text is no such call
 * @example callFormula('=GEAR.IRCORRECT(1200, 35, "oil")') // 3360
 */
export function callFormula(formula: string): unknown {
  const { called, given } = callIn(formula);
  const outcome: unknown = called(...(given.map(argument) as never[]));
  return Array.isArray(outcome) ? outcome.flat()[0] : outcome;
}

/** The arguments of such a call as they are written: a value, or the rows of an array. */
export const callArguments = (formula: string): readonly (Written | readonly Written[][])[] =>
  callIn(formula).given.map((node) => {
    const cells = argument(node) as Written[][];
    return node?.type === "ArrayExpression" ? cells : (cells[0]?.[0] ?? null);
  });

type Written = string | number | boolean | null;

function callIn(formula: string) {
  const node = parse(tokenize(formula)) as AstExpression;
  const name =
    node.type === "CallExpression" && "name" in node.callee ? String(node.callee.name) : "";
  const called = functions[name.replace(/^GEAR\./, "")];
  if (node.type !== "CallExpression" || !called)
    throw new Error(`${formula} calls no function here`);
  return { called, given: node.arguments };
}

const argument = (node: AstExpression | null): unknown[][] =>
  node?.type === "ArrayExpression" ? node.elements.map((row) => row.map(value)) : [[value(node)]];

const value = (node: AstExpression | null): unknown => {
  if (node === null) return null;
  if (node.type === "Literal") return node.value;
  if (node.type === "UnaryExpression" && node.operator === "-")
    return -Number(value(node.arguments[0] ?? null));
  throw new Error(`an argument may be a number, text or an array, not ${node.type}`);
};
