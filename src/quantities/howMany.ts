/**
 * A count of things, in words.
 *
 * @param thing of which more than one are told with an s
 * @example howMany(1, "row") // "1 row"
 * @example howMany(0, "earlier value") // "0 earlier values"
 */
export const howMany = (count: number, thing: string): string =>
  `${count} ${thing}${count === 1 ? "" : "s"}`;
