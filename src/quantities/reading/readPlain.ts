import { answer, type Result, refuse } from "../result";

const NUMBER = /^[-+]?(\d+\.?\d*|\.\d+)(e[-+]?\d+)?$/i;

/**
 * Reads a number without a unit, or text that is one with a decimal point.
 *
 * @returns `wrong` for anything else
 * @example readPlain("1.125") // 1.125
 */
export const readPlain = (cell: unknown): Result<number> => {
  const value = typeof cell === "string" && NUMBER.test(cell.trim()) ? Number(cell) : cell;
  return typeof value === "number" && Number.isFinite(value)
    ? answer(value)
    : refuse("wrong", ({ quantities }) => quantities.pureNumber);
};
