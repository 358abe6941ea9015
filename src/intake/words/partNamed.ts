import { plainWords } from "./fields";

/** How the operations of a breaker are written, in English, German, French and Spanish (from memory). */
const OPERATIONS: readonly [RegExp, string][] = [
  [/^(?:c|close|closed|closing|ein|einschalten|einschaltung|fermeture|cierre)$/, "closing"],
  [
    /^(?:o|open|opened|opening|trip|tripping|aus|ausschalten|ausschaltung|ouverture|apertura)$/,
    "opening",
  ],
];

/**
 * A part with the operation that a column of its own names, as the records name the two in one.
 *
 * @example partNamed("Q0", "Close") // "Q0 closing"
 */
export const partNamed = (part: string, operation: string): string => {
  if (operation === "") return part;
  const words = plainWords(operation);
  const known = OPERATIONS.find(([pattern]) => pattern.test(words))?.[1] ?? operation;
  return part === "" ? known : `${part} ${known}`;
};
