/** Headers of columns in a sentence: `"R 1 min MΩ", "Date"`. */
export const quotedList = (headers: readonly string[], between = ", "): string =>
  headers.map((header) => `"${header}"`).join(between);

/** What is said of a name that looks like another and is not written like it, by the letters that differ. */
export const lookAlike = (letters: readonly string[]): string =>
  letters.length === 0
    ? ""
    : ` To the eye the names are the same: ${quotedList(letters)} ${letters.length === 1 ? "is a letter" : "are letters"} of another alphabet.`;
