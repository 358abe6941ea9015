import type { Verdict } from "../criteria/judge";
import { blank, gear, quoted, result } from "./columns";
import { judged } from "./judged";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  NOT_APPLICABLE,
  type Reference,
  type Row,
} from "./kind";

/** The verdict of one comparison of a computed row; inconclusive where either side is not there. */
export const compared = (
  { value, limit, sense, tolerance, excusable }: Comparison,
  row: Row,
): Verdict => {
  if (excusable && sameWord(row[limit], NOT_APPLICABLE)) return "Not required";
  return isBlank(row[value]) ? "Inconclusive" : judged(row[value], row[limit], sense, tolerance);
};

/** Whether nothing stands against the row in this comparison: it is passed, or the row is not for it. */
export const isMet = (comparison: Comparison, row: Row): boolean =>
  ["Pass", "Not required"].includes(compared(comparison, row));

const comparedBy = ({ value, limit, sense, tolerance = 0 }: Comparison, ref: Reference): string =>
  `IF(${blank(ref(value))},"Inconclusive",IFERROR(${gear("JUDGE", ref(value), ref(limit), quoted(sense), ...(tolerance ? [tolerance] : []))},"Inconclusive"))`;

const isMetBy = (comparison: Comparison, ref: Reference): string => {
  const passed = `${comparedBy(comparison, ref)}="Pass"`;
  return comparison.excusable
    ? `OR(${ref(comparison.limit)}=${quoted(NOT_APPLICABLE)},${passed})`
    : passed;
};

const isUnmetBy = (comparison: Comparison, ref: Reference): string =>
  comparison.excusable
    ? `NOT(${isMetBy(comparison, ref)})`
    : `${comparedBy(comparison, ref)}<>"Pass"`;

/** A column that is answered by a word, one of which is right. */
export interface WordColumn {
  readonly id: string;
  readonly header: string;
  readonly right: string;
  readonly words: readonly string[];
  /** Whether a cell holds a word of the list other than the right one. */
  readonly wrong: (cell: CellValue | undefined) => boolean;
}

/** Columns of a list of words one of which is right; a spreadsheet compares text without regard to case. */
export const wrongWords = (columns: readonly Column[]): WordColumn[] =>
  columns.flatMap(({ id, header, accepts }) => {
    if (accepts?.type !== "list" || accepts.right === undefined) return [];
    const { right } = accepts;
    const words = accepts.values.filter((word) => word !== right);
    return [
      { id, header, right, words, wrong: (cell) => words.some((word) => sameWord(cell, word)) },
    ];
  });

const sameWord = (cell: CellValue | undefined, word: string) =>
  typeof cell === "string" && cell.toLowerCase() === word.toLowerCase();

/**
 * The result of a row, from what its kind declares: `Fail` for a wrong word, `Missing` without its
 * readings, `Inconclusive` where a word is not answered or the test was not made with enough, else
 * the worst of what the row is accepted by. A comparison that the row is excused from counts for
 * nothing, and a row that is excused from all of them is inconclusive.
 */
export function verdictBy(
  columns: readonly Column[],
  accepted: readonly Comparison[],
  enough: readonly Comparison[],
): Column {
  const words = wrongWords(columns);
  const readings = columns.filter(({ need }) => need === "reading").map(({ id }) => id);
  return result(
    (ref) => {
      const judgements = accepted.map((comparison) => comparedBy(comparison, ref));
      const [only = ""] = judgements;
      const are = (verdict: string) => judgements.map((one) => `${one}="${verdict}"`).join(",");
      const met = [
        ...accepted.map((comparison) => isMetBy(comparison, ref)),
        ...(accepted.every(({ excusable }) => excusable) ? [`OR(${are("Pass")})`] : []),
      ];
      const worst =
        judgements.length === 1
          ? only
          : `IF(OR(${are("Fail")}),"Fail",IF(AND(${met.join(",")}),"Pass","Inconclusive"))`;
      const unproved = [
        ...words.map(({ id, right }) => `${ref(id)}<>${quoted(right)}`),
        ...enough.map((comparison) => isUnmetBy(comparison, ref)),
      ];
      const proved =
        unproved.length > 0 ? `IF(OR(${unproved.join(",")}),"Inconclusive",${worst})` : worst;
      const read = `IF(OR(${readings.map((id) => blank(ref(id))).join(",")}),"Missing",${proved})`;
      const wrong = words.flatMap(({ id, words }) =>
        words.map((word) => `${ref(id)}=${quoted(word)}`),
      );
      return wrong.length > 0 ? `IF(OR(${wrong.join(",")}),"Fail",${read})` : read;
    },
    (row) => {
      if (words.some(({ id, wrong }) => wrong(row[id]))) return "Fail";
      if (readings.some((id) => isBlank(row[id]))) return "Missing";
      if (words.some(({ id, right }) => !sameWord(row[id], right))) return "Inconclusive";
      if (!enough.every((comparison) => isMet(comparison, row))) return "Inconclusive";
      const verdicts = accepted.map((comparison) => compared(comparison, row));
      if (verdicts.includes("Fail")) return "Fail";
      return verdicts.includes("Pass") && accepted.every((comparison) => isMet(comparison, row))
        ? "Pass"
        : "Inconclusive";
    },
  );
}
