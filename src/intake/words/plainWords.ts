/** Lower case, full-width signs made plain, and everything but letters, digits and the units' signs a space. */
export const plainWords = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%°]+/gu, " ")
    .trim();
