import type { Column } from "../../records/kind";

/** Whether a column says how a test came out: its reading, or a word to choose, such as a polarity. */
export const tellsOutcome = ({ need, accepts }: Column): boolean =>
  need === "reading" || (need === "condition" && accepts?.type === "list");
