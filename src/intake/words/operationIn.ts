import { type Sense, sensesOf } from "./senses";

/**
 * The operation of a breaker that senses speak of; undefined where they speak of both or of none.
 */
export const operationOf = (senses: ReadonlySet<Sense>): "closing" | "opening" | undefined => {
  const [closing, opening] = [
    senses.has("closing"),
    senses.has("opening") || senses.has("tripping"),
  ];
  return closing === opening ? undefined : closing ? "closing" : "opening";
};

/**
 * The one operation of a breaker that a text of known words names.
 *
 * @example operationIn("CLOSE") // "closing"
 */
export const operationIn = (text: string): "closing" | "opening" | undefined => {
  const { senses, unknown } = sensesOf(text);
  return unknown === 0 ? operationOf(senses) : undefined;
};
