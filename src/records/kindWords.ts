import { type KindsText, type KindWords, kindsIn, storedKinds } from "../messages/kinds";
import type { KindId } from "./kinds";

/**
 * What is said of a record kind, in the language of the texts that were handed down. A kind that there is
 * not goes by its id.
 */
export const kindWords = ({ language }: { readonly language: string }, id: string): KindWords =>
  wordsIn(kindsIn(language), id);

/** The same in the language of a workbook, as its sheets have it. */
export const storedKindWords = (id: string): KindWords => wordsIn(storedKinds(), id);

const wordsIn = (kinds: KindsText, id: string): KindWords => {
  // A kind without words is a type error here.
  const all: Readonly<Record<KindId, KindWords>> = kinds;
  return Object.hasOwn(all, id) ? all[id as KindId] : { title: id, purpose: "", cautions: [] };
};
