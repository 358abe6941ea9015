import type { Verdict } from "../standards/judge";
import { blank, gear, quoted, result } from "./columns/common";
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
export const compared = ({ value, limit, sense, tolerance }: Comparison, row: Row): Verdict =>
  isBlank(row[value]) ? "Inconclusive" : judged(row[value], row[limit], sense, tolerance);

// Both sides are asked for here: how a host hands a blank cell to a custom function is its own affair.
const comparedBy = ({ value, limit, sense, tolerance = 0 }: Comparison, ref: Reference): string =>
  `IF(${any([blank(ref(value)), blank(ref(limit))])},"Inconclusive",IFERROR(${gear("JUDGE", ref(value), ref(limit), quoted(sense), ...(tolerance ? [tolerance] : []))},"Inconclusive"))`;

/** Whether a comparison has anything to compare in this row. */
export const applies = ({ when, limit, excusable }: Comparison, row: Row): boolean =>
  !(when !== undefined && isBlank(row[when])) &&
  !(excusable === true && sameWord(row[limit], NOT_APPLICABLE));

/** The formula's tests of which one being true makes the comparison fall away. */
const fallsAwayBy = ({ when, limit, excusable }: Comparison, ref: Reference): string[] => [
  ...(when === undefined ? [] : [blank(ref(when))]),
  ...(excusable ? [`${ref(limit)}=${quoted(NOT_APPLICABLE)}`] : []),
];

/** The formula's tests that all have to be true for the comparison to count. */
const appliesBy = ({ when, limit, excusable }: Comparison, ref: Reference): string[] => [
  ...(when === undefined ? [] : [`TRIM(${ref(when)})<>""`]),
  ...(excusable ? [`${ref(limit)}<>${quoted(NOT_APPLICABLE)}`] : []),
];

const isMet = (comparison: Comparison, row: Row): boolean =>
  !applies(comparison, row) || compared(comparison, row) === "Pass";

const isMetBy = (comparison: Comparison, ref: Reference): string =>
  any([...fallsAwayBy(comparison, ref), `${comparedBy(comparison, ref)}="Pass"`]);

/** A column that is answered by a word, of which one or more are right. */
export interface WordColumn {
  readonly id: string;
  readonly header: string;
  /** Whether the word is worked out from the row, not typed. */
  readonly computed: boolean;
  readonly right: string;
  /** Words of the list that say that something is not right. */
  readonly words: readonly string[];
  /** Words that a sound row may hold. */
  readonly sound: readonly string[];
  readonly exempt?: string;
  /** Whether a cell holds a word of the list that says that something is not right. */
  readonly wrong: (cell: CellValue | undefined) => boolean;
  /** Whether a cell holds a word that a sound row may hold. */
  readonly answered: (cell: CellValue | undefined) => boolean;
}

/** Columns of a list of words that has a right one; a spreadsheet compares text without regard to case. */
export const wordColumns = (columns: readonly Column[]): WordColumn[] =>
  columns.flatMap(({ id, header, role, accepts }) => {
    if (accepts?.type !== "list" || accepts.right === undefined) return [];
    const { right, also = [], exempt, values } = accepts;
    const sound = [right, ...also];
    const words = values.filter((word) => word !== exempt && !sound.includes(word));
    return [
      {
        id,
        header,
        computed: role === "computed",
        right,
        words,
        sound,
        exempt,
        wrong: (cell) => words.some((word) => sameWord(cell, word)),
        answered: (cell) => sound.some((word) => sameWord(cell, word)),
      },
    ];
  });

const sameWord = (cell: CellValue | undefined, word: string) =>
  typeof cell === "string" && cell.toLowerCase() === word.toLowerCase();

/** The columns by a word of which the row does not apply. */
export const exempting = (columns: readonly Column[], row: Row): WordColumn[] =>
  wordColumns(columns).filter(
    ({ id, exempt }) => exempt !== undefined && sameWord(row[id], exempt),
  );

/**
 * The result of a row, from what its kind declares: `Fail` for a wrong word, `Not required` for one by
 * which the row does not apply, `Missing` without its readings, `Inconclusive` where the test was not made
 * with enough, else the worst of what the row is accepted by and, for a word that is not answered,
 * `Inconclusive`.
 */
export function verdictBy(
  columns: readonly Column[],
  accepted: readonly Comparison[],
  enough: readonly Comparison[],
): Column {
  const words = wordColumns(columns);
  const readings = columns.filter(({ need }) => need === "reading").map(({ id }) => id);
  /** Whether a row may be left with nothing to accept it by. */
  const allMayFall =
    accepted.length > 0 && accepted.every(({ when, excusable }) => when !== undefined || excusable);
  return result(
    (ref) => {
      const failed = accepted.map((comparison) =>
        all([...appliesBy(comparison, ref), `${comparedBy(comparison, ref)}="Fail"`]),
      );
      const is = (id: string, word: string) => `${ref(id)}=${quoted(word)}`;
      const passed = [
        ...accepted.map((comparison) => isMetBy(comparison, ref)),
        ...(allMayFall ? [any(accepted.map((one) => all(appliesBy(one, ref))))] : []),
        ...words.map(({ id, sound }) => any(sound.map((word) => is(id, word)))),
      ];
      const [only] = accepted;
      const proof = passed.length > 0 ? `IF(${all(passed)},"Pass","Inconclusive")` : '"Pass"';
      const worst =
        only === undefined
          ? proof
          : passed.length === 1
            ? comparedBy(only, ref)
            : `IF(${any(failed)},"Fail",${proof})`;
      const unproved = enough.map((comparison) =>
        all([...appliesBy(comparison, ref), `${comparedBy(comparison, ref)}<>"Pass"`]),
      );
      const proved =
        unproved.length > 0 ? `IF(OR(${unproved.join(",")}),"Inconclusive",${worst})` : worst;
      const read = `IF(OR(${readings.map((id) => blank(ref(id))).join(",")}),"Missing",${proved})`;
      const exempt = words.flatMap(({ id, exempt }) => (exempt ? [is(id, exempt)] : []));
      const asked = exempt.length > 0 ? `IF(OR(${exempt.join(",")}),"Not required",${read})` : read;
      const wrong = words.flatMap(({ id, words }) => words.map((word) => is(id, word)));
      return wrong.length > 0 ? `IF(OR(${wrong.join(",")}),"Fail",${asked})` : asked;
    },
    (row) => {
      if (words.some(({ id, wrong }) => wrong(row[id]))) return "Fail";
      if (words.some(({ id, exempt }) => exempt && sameWord(row[id], exempt)))
        return "Not required";
      if (readings.some((id) => isBlank(row[id]))) return "Missing";
      if (!enough.every((comparison) => isMet(comparison, row))) return "Inconclusive";
      const applying = accepted.filter((comparison) => applies(comparison, row));
      if (accepted.length > 0 && applying.length === 0) return "Inconclusive";
      const verdicts = applying.map((comparison) => compared(comparison, row));
      if (verdicts.includes("Fail")) return "Fail";
      if (words.some(({ id, answered }) => !answered(row[id]))) return "Inconclusive";
      return verdicts.every((verdict) => verdict === "Pass") ? "Pass" : "Inconclusive";
    },
  );
}

const joined = (name: string) => (tests: readonly string[]) =>
  tests.length === 1 ? String(tests[0]) : `${name}(${tests.join(",")})`;
const all = joined("AND");
const any = joined("OR");
