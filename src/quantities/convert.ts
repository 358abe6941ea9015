import { answer, type Result, refuse } from "./result";
import { type Unit, type UnitSize, unitSize } from "./units";

/**
 * Brings a value from one unit to another of the same quantity.
 *
 * Powers of ten move the decimal point in the number's text, so that 5.2 GΩ is exactly 5200 MΩ and
 * not a neighbour of it.
 *
 * @param value any finite number, in `from`
 * @returns the value in `to`; `wrong` for unlike quantities or a value that is no number, `range`
 *   where the outcome is too large or too small for a number
 * @example convert(5.2, "GΩ", "MΩ") // 5200
 */
export const convert = (value: number, from: Unit, to: Unit): Result<number> =>
  from === to && Number.isFinite(value)
    ? answer(value)
    : Number.isFinite(value)
      ? convertText(String(value), from, to)
      : refuse("wrong", ({ quantities }) => quantities.notFinite(value, from, to));

/** The same for a number still in its text, such as "5.2" or "1.2e3", with a point as decimal mark. */
export const convertText = (number: string, from: Unit, to: Unit): Result<number> => {
  const [source, target] = [unitSize(from), unitSize(to)];
  if (source.quantity !== target.quantity)
    return refuse("wrong", ({ quantities }) =>
      quantities.otherQuantity(
        from,
        quantities.of(source.quantity),
        to,
        quantities.of(target.quantity),
      ),
    );
  const [digits = "", exponent = "0"] = number.split("e");
  const shifted = Number(`${digits}e${Number(exponent) + source.exponent - target.exponent}`);
  const value = (from === to ? shifted : scaled(shifted, source, target)) + 0;
  const lost = !Number.isFinite(value) || (shifted === 0 && /[1-9]/.test(digits));
  return lost
    ? refuse("range", ({ quantities }) => quantities.beyondNumbers(number, from, to))
    : answer(value);
};

/** Figures that a factor which is no power of ten leaves to be trusted. */
const FIGURES = 14;

const scaled = (value: number, { times = 1, plus = 0 }: UnitSize, target: UnitSize): number => {
  const { times: other = 1, plus: less = 0 } = target;
  return times === other && plus === less
    ? value
    : Number((((value + plus) * times) / other - less).toPrecision(FIGURES));
};
