const [MINUS, POINT] = [45, 46];
/** Powers of ten that a double holds exactly. */
const POWERS = Array.from({ length: 23 }, (_, power) => 10 ** power);
/** Whole numbers up to this many digits are exact. */
const EXACT = 15;

/**
 * The number that bytes write; NaN where they write none. A number of up to 15 digits and a small exponent
 * is a whole number over an exact power of ten, so that the division rounds once and right; any other is
 * left to the language.
 */
export function readNumber(bytes: Uint8Array, from: number, to: number): number {
  const negative = bytes[from] === MINUS;
  const start = negative ? from + 1 : from;
  const point = digitsEnd(bytes, start, to);
  const end = point < to && bytes[point] === POINT ? digitsEnd(bytes, point + 1, to) : point;
  const places = Math.max(0, end - point - 1);
  const digits = point - start + places;
  if (end < to || digits === 0 || digits > EXACT) return readAny(bytes, from, to);
  let whole = 0;
  for (let at = start; at < to; at++) if (at !== point) whole = whole * 10 + (bytes[at] ?? 0) - 48;
  const value = places > 0 ? whole / (POWERS[places] ?? 1) : whole;
  return negative ? -value : value;
}

function digitsEnd(bytes: Uint8Array, from: number, to: number): number {
  let at = from;
  while (at < to && (bytes[at] ?? 0) >= 48 && (bytes[at] ?? 0) <= 57) at += 1;
  return at;
}

function readAny(bytes: Uint8Array, from: number, to: number): number {
  const end = Math.min(to, from + LONGEST);
  for (let at = from; at < end; at++) if (!OF_NUMBER.has(bytes[at] ?? 0)) return Number.NaN;
  // Node makes a text of so few bytes quickest so.
  const text: string = String.fromCharCode.apply(null, bytes.subarray(from, end) as never);
  return text === "" ? Number.NaN : Number(text);
}

/** Longer than any program writes a number. */
const LONGEST = 100;
const OF_NUMBER: ReadonlySet<number> = new Set(
  Array.from("0123456789+-.eE", (letter) => letter.charCodeAt(0)),
);
