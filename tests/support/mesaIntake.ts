import { placedInto, sampleBook } from "./sampleIntake";

export { TODAY } from "./sampleIntake";

/** The workbook of the sample lineup by American practice, nothing recorded yet. */
export const book = sampleBook("mesa-metal-clad");

/** What lines come to in the sample lineup by American practice. */
export const placed = placedInto(book);
