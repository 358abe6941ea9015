/**
 * A figure that follows from another by a factor, freed from the dust of binary arithmetic: twelve digits.
 *
 * @example tidy(110 * 1.1) // 121
 */
export const tidy = (value: number): number => Number(value.toPrecision(12));
