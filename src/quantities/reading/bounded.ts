import { answer, type Result, refuse } from "../result";
import type { Bound } from "./reading";

/** A value and whether it is the true one or only known to lie above or below it. */
export interface Bounded {
  readonly value: number;
  readonly bound: Bound;
}

/** Figures that a bound is written with; a value that is exact keeps all of its own. */
const FIGURES = 6;

/**
 * A quantity as a computed cell shows it: a number where exact, else text such as `> 3160000`, never a
 * number that merely looks big.
 *
 * A bound is written with at most six figures, rounded to the safe side: a lower bound down, an upper
 * bound up, so that what is written says no more than what is known.
 *
 * @example bounded({ value: 9387403.933595695, bound: "above" }) // "> 9387400"
 * @example bounded({ value: 0.123456789, bound: "below" }) // "< 0.123457"
 */
export const bounded = ({ value, bound }: Bounded): number | string => {
  if (bound === "exact") return value;
  return bound === "above" ? `> ${digits(safe(value, -1))}` : `< ${digits(safe(value, 1))}`;
};

/** The nearest number of six figures that does not lie on the wrong side: below for −1, above for 1. */
const safe = (value: number, side: 1 | -1): number => {
  const near = Number(value.toPrecision(FIGURES));
  if ((near - value) * side >= 0) return near;
  const step = 10 ** (exponentOf(value) - FIGURES + 1);
  const moved = Number((near + side * step).toPrecision(FIGURES));
  return Number.isFinite(moved) ? moved : value;
};

const exponentOf = (value: number): number => Number(value.toExponential().split("e")[1]);

/** Plain digits, where they are not too many to read. */
const digits = (value: number): string => {
  const text = String(value);
  const places = FIGURES - 1 - exponentOf(value);
  return text.includes("e-") && places <= 100 ? value.toFixed(places).replace(/0+$/, "") : text;
};

const BOUND = /^([<>]) (-?\d+(?:\.\d+)?(?:e[-+]?\d+)?)$/;

/**
 * Reads a number, or text as `bounded` writes it.
 *
 * @returns `wrong` for anything else
 * @example readBounded("> 3160000") // { value: 3160000, bound: "above" }
 */
export const readBounded = (cell: unknown): Result<Bounded> => {
  const [, sign, digits] = typeof cell === "string" ? (BOUND.exec(cell.trim()) ?? []) : [];
  const value = digits === undefined ? cell : Number(digits);
  if (typeof value !== "number" || !Number.isFinite(value))
    return refuse("wrong", ({ quantities }) => quantities.numberOrBound);
  return answer({ value, bound: sign === undefined ? "exact" : sign === ">" ? "above" : "below" });
};
