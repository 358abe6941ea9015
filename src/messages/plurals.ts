/** The forms of a word by how many there are, as the plural rules of its language name them. */
export type Forms = Partial<Record<Intl.LDMLPluralRule, string>> & { readonly other: string };

/**
 * Chooses the form of a word for a number.
 *
 * @param language a language as BCP 47 has it
 * @example pluralIn("en")(1, { one: "row", other: "rows" }) // "row"
 */
export const pluralIn = (language: string) => {
  const rules = new Intl.PluralRules(language);
  return (count: number, forms: Forms): string => forms[rules.select(count)] ?? forms.other;
};

/**
 * Writes a count with its word, the number as the language writes it.
 *
 * @example countIn("en")(1250, { one: "row", other: "rows" }) // "1,250 rows"
 */
export const countIn = (language: string) => {
  const plural = pluralIn(language);
  const numbers = new Intl.NumberFormat(language);
  return (count: number, forms: Forms): string =>
    `${numbers.format(count)} ${plural(count, forms)}`;
};
