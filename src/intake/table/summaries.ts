import { memoizeText } from "../../quantities/memoizeText";
import { anyWord } from "../words/phrases";
import type { ExportColumn } from "../words/titles";
import { PLACING } from "./facts";

const SUMMARY = new RegExp(`^${anyWord(({ summaries }) => summaries)}\\b[\\s:.=]*$`, "iu");
/** The same with what it is of: `Total leakage`, `Average of poles`. */
const SUMMARY_OF = new RegExp(`^${anyWord(({ summariesOf }) => summariesOf)}\\s+\\p{L}{2}`, "iu");
const isSummary = (word: string): boolean =>
  word.length < 40 && (SUMMARY.test(word) || SUMMARY_OF.test(word));

/** Makes the reader of lines that are sums, averages or limits of others: their word, where one stands in the place of a panel, part or phase. */
export const summaryReader = () => {
  const isKnown = memoizeText(isSummary);
  return (cells: readonly string[], columns: readonly ExportColumn[]): string | undefined =>
    summaryIn(cells, columns, isKnown);
};

const summaryIn = (
  cells: readonly string[],
  columns: readonly ExportColumn[],
  isSummary: (word: string) => boolean,
): string | undefined => {
  let at = 0;
  while (at < cells.length && cells[at] === "") at += 1;
  const first = cells[at];
  if (first !== undefined && isSummary(first)) return first;
  for (const { index, field } of columns)
    if (field !== undefined && index > at && PLACING.has(field) && field !== "test") {
      const cell = cells[index];
      if (cell !== undefined && cell.length > 2 && isSummary(cell)) return cell;
    }
  return undefined;
};
