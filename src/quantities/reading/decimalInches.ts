const INCHES =
  /^(?:(\d+(?:\.\d+)?) ?(?:ft|foot|feet|')[ -]*)?(?:(\d+(?:\.\d+)?)(?:[ -](\d+)\/(\d+))?|(\d+)\/(\d+)) ?(in|inch|inches|"|mils?|ft|feet)\.?$/i;
const FEET_ALONE = /^(\d+(?:\.\d+)?) ?'$/;

/**
 * Feet and inches with fractions, as drawings write them, as one decimal number; text that is no such length
 * is given back as it is.
 *
 * @example decimalInches("71 1/2 in") // "71.5 in"
 * @example decimalInches("6'-1 1/2\"") // "73.5 in"
 */
export const decimalInches = (text: string): string => {
  const plain = text
    .trim()
    .replace(/[″“”]|''/g, '"')
    .replace(/[′’‘]/g, "'")
    .replace(/\s+/g, " ");
  const [, feetAlone] = FEET_ALONE.exec(plain) ?? [];
  if (feetAlone !== undefined) return `${feetAlone} ft`;
  const [found, feet, whole, over, under, alone, below, unit = ""] = INCHES.exec(plain) ?? [];
  const divisor = Number(under ?? below ?? 1);
  if (found === undefined || divisor === 0) return text;
  if (feet === undefined && over === undefined && alone === undefined) return text;
  const number = Number(whole ?? 0) + Number(over ?? alone ?? 0) / divisor;
  if (feet === undefined) return `${number} ${unit}`;
  return /^(?:in|")/i.test(unit) ? `${Number(feet) * 12 + number} in` : text;
};
