import { memoizeText } from "../../quantities/memoizeText";

/** Lower case, full-width signs made plain, and everything but letters, digits and the units' signs a space. */
export const plainWords = memoizeText((text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}%°]+/gu, " ")
    .trim(),
);
