import type { Bounded } from "../criteria/judge";
import { answer, type Result, refuse } from "../quantities/result";

/** A quantity as a cell shows it: a number where exact, else text such as `> 3160000`, never a number. */
export const bounded = ({ value, bound }: Bounded): Result<number | string> =>
  answer(bound === "exact" ? value : `${bound === "above" ? ">" : "<"} ${value}`);

const BOUND = /^([<>]) (-?\d+(?:\.\d+)?(?:e[-+]?\d+)?)$/;

/**
 * Reads a number, or text as `bounded` writes it.
 *
 * @example readBounded("> 3160000") // value 3160000, bound "above"
 */
export const readBounded = (cell: unknown): Result<Bounded> => {
  const [, sign, digits] = typeof cell === "string" ? (BOUND.exec(cell.trim()) ?? []) : [];
  const value = digits === undefined ? cell : Number(digits);
  if (typeof value !== "number" || !Number.isFinite(value))
    return refuse("wrong", 'a number belongs here, or a bound such as "> 3160000".');
  return answer({ value, bound: sign === undefined ? "exact" : sign === ">" ? "above" : "below" });
};
