import { isFiller, type Sense, sensesOf } from "../words/senses";

/** A word of a name: as it is written, and what it speaks of. */
export interface NameToken {
  readonly text: string;
  readonly senses: readonly Sense[];
}

const WITH_FIGURE = /[\p{L}\p{N}]*\p{N}[\p{L}\p{N}]*/gu;

/** The circuits of current transformers, as a test of their loops has them in its name, are such a part too. */
const asCircuits = (token: NameToken): NameToken =>
  token.senses.includes("loopcheck") ? { ...token, senses: [...token.senses, "ct"] } : token;

/**
 * The words of a name, those with figures whole: `Q0 of J03` has `q0` and `j03`.
 *
 * @example nameTokens("Breaker 52-M1") // breaker, 52, m1
 */
export const nameTokens = (text: string): NameToken[] => {
  const plain = text.normalize("NFKD").replace(/\p{M}/gu, "").toLowerCase();
  const figures = (plain.match(WITH_FIGURE) ?? []).map((word) => ({ text: word, senses: [] }));
  const words = sensesOf(plain.replace(WITH_FIGURE, " ")).words.filter(
    ({ text: word, senses }) => senses.length > 0 || !isFiller(word),
  );
  return [...words.map(asCircuits), ...figures];
};

/** Whether a word is written so in a name, and whether one there speaks of the same. */
export const hasWord = (name: readonly NameToken[], { text }: NameToken): boolean =>
  name.some((one) => one.text === text);

export const hasMeaning = (name: readonly NameToken[], token: NameToken): boolean => {
  const told = telling(token);
  return (
    hasWord(name, token) || name.some(({ senses }) => senses.some((sense) => told.includes(sense)))
  );
};

/** What a word speaks of besides circuits, which any of them are: `Spannungspfad` is none of the current circuits. */
const telling = ({ senses }: NameToken): readonly Sense[] => {
  const own = senses.filter((sense) => sense !== "circuits");
  return own.length > 0 ? own : senses;
};
