/** Headers of columns in a sentence: `"R 1 min MΩ", "Date"`. */
export const quotedList = (headers: readonly string[], between = ", "): string =>
  headers.map((header) => `"${header}"`).join(between);
