import type { Words } from "./language";

/** Lower case, without accents, one space between words. */
export const plain = (text: string): string =>
  text
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replaceAll("ß", "ss")
    .toLowerCase()
    .replace(/\s+/g, " ");

/** Any of some words, as whole words, in a text that is made `plain`. */
export const anyOf = (words: Words): RegExp =>
  new RegExp(
    `(?<![\\p{L}\\p{N}])(?:${words
      .map(plain)
      .map((word) => (word.endsWith("-") ? `${word.slice(0, -1)}\\p{L}*` : word))
      .join("|")})(?![\\p{L}\\p{N}])`,
    "u",
  );
