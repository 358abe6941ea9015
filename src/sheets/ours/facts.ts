import type { CellValue } from "../../records/kind";
import type { Path } from "./equipmentWords";

/** One number, word or text of a nested whole, and where it stands. */
export interface Fact {
  readonly path: Path;
  readonly value: CellValue;
}

/**
 * Every number and text of a nested whole, one after the other.
 *
 * @example factsOf({ a: [{ b: 1 }] }) // [{ path: ["a", 0, "b"], value: 1 }]
 */
export function factsOf(whole: unknown, path: Path = []): Fact[] {
  if (Array.isArray(whole)) return whole.flatMap((part, at) => factsOf(part, [...path, at]));
  if (typeof whole === "object" && whole !== null)
    return Object.entries(whole).flatMap(([key, part]) => factsOf(part, [...path, key]));
  return ["number", "string", "boolean"].includes(typeof whole)
    ? [{ path, value: whole as CellValue }]
    : [];
}

/**
 * The nested whole that facts tell, whatever their order. Facts that cannot stand together leave gaps,
 * which the reader of the whole finds.
 *
 * @example wholeOf([{ path: ["a", 0, "b"], value: 1 }]) // { a: [{ b: 1 }] }
 */
export function wholeOf(facts: readonly Fact[]): Record<string, unknown> {
  const whole: Record<string, unknown> = {};
  for (const { path, value } of facts) put(whole, path, value);
  return whole;
}

type Parts = Record<string | number, unknown>;

function put(whole: Parts, [first, ...rest]: Path, value: CellValue): void {
  if (first === undefined || first === "__proto__") return;
  const [next] = rest;
  if (next === undefined) {
    whole[first] = value;
    return;
  }
  if (typeof whole[first] !== "object" || whole[first] === null)
    whole[first] = typeof next === "number" ? [] : {};
  put(whole[first] as Parts, rest, value);
}
