/** Units and digits of other scripts, written as the unit reader knows them. */
const UNITS: readonly (readonly [RegExp, string])[] = [
  [/جي[جغ]ا ?[أا]وم/gu, "GΩ"],
  [/مي[جغ]ا ?[أا]وم/gu, "MΩ"],
  [/كيلو ?[أا]وم/gu, "kΩ"],
  [/ميكرو ?[أا]وم/gu, "µΩ"],
  [/م[ي]?ل[ي]? ?[أا]وم/gu, "mΩ"],
  [/(?<!\p{L})[أا]وم(?!\p{L})/gu, "Ω"],
  [/كيلو ?فولت|ك\.? ?ف\.?(?!\p{L})/gu, "kV"],
  [/فولت/gu, "V"],
  [/م[ي]?ل[ي]? ?[أا]مبير|م\.? ?[أا]\.?(?!\p{L})/gu, "mA"],
  [/[أا]مبير/gu, "A"],
  [/م[ي]?ل[ي]? ?ثانية/gu, "ms"],
  [/ثانية|ثوان[ي]?/gu, "s"],
  [/دقيقة(?: واحدة)?|دقائق/gu, "min"],
  [/م ?°|° ?م/gu, "°C"],
  [/نيوتن ?[.·]? ?متر/gu, "N·m"],
  [/٪/gu, "%"],
];

const DIGITS = /[٠-٩۰-۹]/gu;

/**
 * A text with its digits and units in Latin script.
 *
 * @example latin("٢٢٫٣ جيجا أوم") // "22.3 GΩ"
 */
/** Marks of the wave after a voltage, which are no part of the unit: kVrms, kV AC, kV ef. */
export const withoutWave = (text: string): string =>
  text.replace(/\b(k?v) ?(?:r\.?m\.?s\.?|ac|dc|ca|cc|ef\.?|eff\.?)(?![a-z])/giu, "$1");

export const latin = (text: string): string => {
  if (!/[\u0600-\u06ff]/u.test(text)) return text;
  const digits = text
    .replace(DIGITS, (digit) => String((digit.charCodeAt(0) & 0xf) % 10))
    .replace(/(?<=\d)٫(?=\d)/g, ".")
    .replace(/(?<=\d)٬(?=\d)/g, "");
  return UNITS.reduce((written, [form, unit]) => written.replace(form, unit), digits);
};
