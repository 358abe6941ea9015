import type { Weight } from "../check/findings/finding";

/** How a mark looks by the weight of its finding. */
export const MARK_LOOK: Readonly<Record<Weight, { fill: string; ink: string }>> = {
  stop: { fill: "#F2B8A0", ink: "#6B1410" },
  query: { fill: "#FFE39A", ink: "#5A3C00" },
  note: { fill: "#D5E4EC", ink: "#17384A" },
};

/**
 * The rule of a mark, without the equals sign: always true, with nothing in it that calls an add-in or
 * moves with a cell. Its text is what a mark is known by, whatever became of its id and its cells.
 */
export const markRule = (weight: Weight): string => `LEN("Gearproof mark: ${weight}")>0`;

const OURS = /^=?\s*LEN\("Gearproof mark: \w+"\)\s*>\s*0$/i;

export const isMarkRule = (formula: string): boolean => OURS.test(formula);
