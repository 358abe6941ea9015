import { operationIn } from "./operationIn";
import { anyWord } from "./phrases";
import { plainWords } from "./plainWords";

/** The operations of a breaker, as the records name them. */
const OPERATIONS = (["closing", "opening"] as const).map(
  (name) => [name, new RegExp(`^${anyWord(({ operations }) => operations[name])}$`)] as const,
);

/**
 * A part with the operation that a column of its own names, as the records name the two in one.
 *
 * @example partNamed("Q0", "Close") // "Q0 closing"
 */
export const partNamed = (part: string, operation: string): string => {
  if (operation === "") return part;
  const words = plainWords(operation);
  const known =
    OPERATIONS.find(([, pattern]) => pattern.test(words))?.[0] ??
    operationIn(operation) ??
    operation;
  return part === "" ? known : `${part} ${known}`;
};
