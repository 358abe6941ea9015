const BESIDE = /^(.*\d.*?)\s*(?:\(([^()]*\p{L}[^()]*)\)|[;*]\s*(\D.*))$/u;

/**
 * A number with a comment beside it, such as `5200 (after cleaning)` or `31,5 * cleaned`.
 *
 * @returns undefined where there is no comment
 * @example besideNumber("5200 (after cleaning)") // { number: "5200", comment: "after cleaning" }
 */
export const besideNumber = (
  text: string,
): { readonly number: string; readonly comment: string } | undefined => {
  const [, number, bracketed, trailing] = text.length > 300 ? [] : (BESIDE.exec(text.trim()) ?? []);
  const comment = (bracketed ?? trailing)?.trim();
  return number !== undefined && comment ? { number: number.trim(), comment } : undefined;
};
