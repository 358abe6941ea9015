/** Figures of Arabic and Persian, each a row of ten. */
const ROWS = [0x660, 0x6f0] as const;
const FIGURES = /[٠-٩۰-۹]/gu;
const MARKS = /[٠-٩۰-۹٪]/u;

/**
 * A text with the figures of Arabic and Persian as 0 to 9, and their marks for decimals, thousands and
 * per cent as the usual ones; any other text as it is.
 *
 * @example latinDigits("٥٠٠ فولت") // "500 فولت"
 */
export const latinDigits = (text: string): string =>
  MARKS.test(text)
    ? text
        .replace(FIGURES, (figure) => {
          const code = figure.codePointAt(0) ?? 0;
          return String(code - (ROWS.find((row) => code >= row && code < row + 10) ?? code));
        })
        .replace(/(?<=\d)٫(?=\d)/gu, ".")
        .replace(/(?<=\d)٬(?=\d)/gu, "")
        .replace(/٪/gu, "%")
    : text;
