import type { Lineup } from "../lineup/lineup";
import { takesBack } from "../quantities/remarks/doubtIn";
import type { Verdict } from "../standards/judge";
import { blank, gear, quoted, result } from "./columns/common";
import { guardedLimit, hasInstrument, straddles } from "./guard";
import { outsideRange, outsideRangeBy } from "./instruments";
import { judged } from "./judged";
import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  isNotApplicable,
  NOT_APPLICABLE,
  type Reference,
  type Row,
  sameWord,
} from "./kind";
import { tooSmallBy, tooSmallIn } from "./tooSmall";

/** The verdict of one comparison of a computed row; inconclusive where either side is not there. */
export const compared = (comparison: Comparison, row: Row): Verdict => {
  const { value, limit, lenient, sense, tolerance, unit, asks } = comparison;
  if (isBlank(row[value])) return "Inconclusive";
  const against = (id: string) => judged(row[value], row[id], sense, tolerance, unit);
  const verdict = against(limit);
  if (asks && verdict === "Fail") return "Inconclusive";
  if (lenient === undefined || isBlank(row[lenient])) return verdict;
  if (against(lenient) === "Fail") return "Fail";
  return verdict === "Fail" ? "Inconclusive" : verdict;
};

/** The formulas of one kind's comparisons, by the columns that they look at. */
const comparisonsIn = (columns: readonly Column[]) => {
  const typed = new Set(columns.filter(({ role }) => role === "entry").map(({ id }) => id));
  // Both sides are asked for here: how a host hands a blank cell to a custom function is its own affair.
  const against = (
    comparison: Comparison,
    limit: string,
    ref: Reference,
    judgedBy = limit,
  ): string => {
    const { value, sense, tolerance = 0, unit } = comparison;
    const asWritten = unit !== undefined && typed.has(value);
    const more = asWritten ? [tolerance, quoted(unit)] : tolerance ? [tolerance] : [];
    return `IF(${any([blank(ref(value)), blank(limit)])},"Inconclusive",IFERROR(${gear("JUDGE", ref(value), judgedBy, quoted(sense), ...more)},"Inconclusive"))`;
  };
  const byLimit = (comparison: Comparison, ref: Reference) =>
    against(comparison, ref(comparison.limit), ref);
  /** The test that a comparison fails: by the more lenient of its limits, where it has two. */
  const failsBy = (comparison: Comparison, ref: Reference): string => {
    const { limit, lenient } = comparison;
    if (lenient === undefined) return `${byLimit(comparison, ref)}="Fail"`;
    const last = `IF(${blank(ref(lenient))},${ref(limit)},${ref(lenient)})`;
    return `${against(comparison, last, ref)}="Fail"`;
  };
  const isNamed = hasInstrument(columns);
  /** The test that a comparison passes, by the decision rule of the lineup. */
  const passesBy = (comparison: Comparison, ref: Reference, lineup: Lineup) => {
    const last = guardedLimit(comparison, ref, lineup, isNamed);
    return `${against(comparison, ref(comparison.limit), ref, last)}="Pass"`;
  };
  return { byLimit, failsBy, passesBy };
};

/** Whether a comparison has anything to compare in this row. */
export const applies = ({ when, limit, excusable, insteadOf }: Comparison, row: Row): boolean =>
  !(when !== undefined && isBlank(row[when])) &&
  !(insteadOf !== undefined && !isBlank(row[insteadOf])) &&
  !(excusable === true && sameWord(row[limit], NOT_APPLICABLE));

/** The formula's tests of which one being true makes the comparison fall away. */
const fallsAwayBy = (comparison: Comparison, ref: Reference): string[] => {
  const { when, limit, excusable, insteadOf } = comparison;
  return [
    ...(when === undefined ? [] : [blank(ref(when))]),
    ...(insteadOf === undefined ? [] : [isFilled(ref(insteadOf))]),
    ...(excusable ? [`${ref(limit)}=${quoted(NOT_APPLICABLE)}`] : []),
  ];
};

/** The formula's tests that all have to be true for the comparison to count. */
const appliesBy = (comparison: Comparison, ref: Reference): string[] => {
  const { when, limit, excusable, insteadOf } = comparison;
  return [
    ...(when === undefined ? [] : [isFilled(ref(when))]),
    ...(insteadOf === undefined ? [] : [blank(ref(insteadOf))]),
    ...(excusable ? [`${ref(limit)}<>${quoted(NOT_APPLICABLE)}`] : []),
  ];
};

const isFilled = (cell: string): string => `TRIM(${cell})<>""`;

const isMet = (comparison: Comparison, row: Row): boolean =>
  !applies(comparison, row) || compared(comparison, row) === "Pass";

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
  /** Ids of the columns that say whether the word is asked for, and whether its row always applies. */
  readonly asked?: string;
  readonly always?: string;
  /** Whether a cell holds a word of the list that says that something is not right. */
  readonly wrong: (cell: CellValue | undefined) => boolean;
  /** Whether a cell holds a word that a sound row may hold. */
  readonly answered: (cell: CellValue | undefined) => boolean;
}

/** Columns of a list of words that has a right one; a spreadsheet compares text without regard to case. */
export const wordColumns = (columns: readonly Column[]): WordColumn[] =>
  columns.flatMap(({ id, header, role, accepts }) => {
    if (accepts?.type !== "list" || accepts.right === undefined) return [];
    const { right, also = [], exempt, asked, always, values } = accepts;
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
        asked,
        always,
        wrong: (cell) => words.some((word) => sameWord(cell, word)),
        answered: (cell) => sound.some((word) => sameWord(cell, word)),
      },
    ];
  });

/** Whether a word is asked for in this row. */
export const isAsked = ({ asked }: WordColumn, row: Row): boolean =>
  asked === undefined || !isBlank(row[asked]);

/** The columns by a word of which the row does not apply. */
export const exempting = (columns: readonly Column[], row: Row): WordColumn[] =>
  wordColumns(columns).filter((word) => isExempt(word, row));

const isExempt = ({ id, exempt, always }: WordColumn, row: Row): boolean =>
  exempt !== undefined &&
  sameWord(row[id], exempt) &&
  (always === undefined || isBlank(row[always]));

/** The readings without which a row is missing something. */
export const readingsOf = (columns: readonly Column[]): Column[] =>
  columns.filter(({ need }) => need === "reading");

/** Whether a reading is there, or its limit says that the row does without it. */
const isThere = ({ id, unless }: Column, row: Row): boolean =>
  !isBlank(row[id]) || (unless !== undefined && isNotApplicable(row[unless]));

/**
 * The result of a row, from what its kind declares: `Fail` for a wrong word, `Not required` for one by
 * which the row does not apply, `Missing` without its readings, `Fail` where a comparison fails outright,
 * `Inconclusive` where the test was not made with enough, a reading lies outside its instrument's range or is so small that it proves nothing, else the worst of what the row is accepted by and,
 * for a word that is not answered or a remark that takes the pass back, `Inconclusive`.
 */
export function verdictBy(
  columns: readonly Column[],
  accepted: readonly Comparison[],
  enough: readonly Comparison[],
): Column {
  const words = wordColumns(columns);
  const readings = readingsOf(columns);
  return result(
    (ref, lineup) => formulaOf({ columns, words, readings, accepted, enough }, ref, lineup),
    (row, lineup) => {
      if (words.some((word) => word.wrong(row[word.id]) && isAsked(word, row))) return "Fail";
      if (words.some((word) => isExempt(word, row))) return "Not required";
      if (!readings.every((column) => isThere(column, row))) return "Missing";
      const isAnswered = words.every((word) => !isAsked(word, row) || word.answered(row[word.id]));
      return measured({ columns, accepted, enough }, isAnswered, row, lineup);
    },
  );
}

/** The verdict on a row's numbers, once its words and readings are there. */
function measured(
  { columns, accepted, enough }: Pick<Judging, "columns" | "accepted" | "enough">,
  isAnswered: boolean,
  row: Row,
  lineup: Lineup,
): Verdict {
  const worst = worstOf({ columns, accepted }, row, lineup);
  if (worst === "outright") return "Fail";
  if (!enough.every((comparison) => isMet(comparison, row))) return "Inconclusive";
  if (outsideRange(columns, row, lineup).length > 0) return "Inconclusive";
  if (tooSmallIn(columns, row).length > 0) return "Inconclusive";
  if (worst === undefined && accepted.length > 0) return "Inconclusive";
  if (worst === "Fail") return "Fail";
  return isAnswered && worst !== "Inconclusive" && !isTakenBack(row) ? "Pass" : "Inconclusive";
}

/** The worst of what a row is accepted by: a failure by itself first, then any other; undefined where nothing of it applies. */
function worstOf(
  { columns, accepted }: Pick<Judging, "columns" | "accepted">,
  row: Row,
  lineup: Lineup,
): Verdict | "outright" | undefined {
  let worst: Verdict | undefined;
  for (const comparison of accepted) {
    if (!applies(comparison, row)) continue;
    const verdict = compared(comparison, row);
    if (verdict === "Fail" && comparison.outright) return "outright";
    if (verdict === "Fail" || worst === "Fail") worst = "Fail";
    else if (verdict !== "Pass" || straddles(comparison, columns, row, lineup))
      worst = "Inconclusive";
    else worst ??= "Pass";
  }
  return worst;
}

/** Whether what a person wrote beside the row takes its pass back, such as a flashover. */
const isTakenBack = ({ remarks }: Row): boolean =>
  typeof remarks === "string" && takesBack(remarks);

interface Judging {
  readonly columns: readonly Column[];
  readonly words: readonly WordColumn[];
  readonly readings: readonly Column[];
  readonly accepted: readonly Comparison[];
  readonly enough: readonly Comparison[];
}

/** The same as the formula of a cell, from the last question asked to the first. */
function formulaOf(kind: Judging, ref: Reference, lineup: Lineup): string {
  const { words, readings } = kind;
  const is = (id: string, word: string) => `${ref(id)}=${quoted(word)}`;
  const read = readings.map(({ id, unless }) =>
    unless === undefined
      ? blank(ref(id))
      : all([blank(ref(id)), `${ref(unless)}<>${quoted(NOT_APPLICABLE)}`]),
  );
  const missing = ifAny(read, '"Missing"', measuredBy(kind, ref, lineup));
  const exempt = words.flatMap(({ id, exempt, always }) =>
    exempt === undefined
      ? []
      : [all([is(id, exempt), ...(always === undefined ? [] : [blank(ref(always))])])],
  );
  const wrong = words.flatMap(({ id, words, asked }) =>
    words.map((word) =>
      all([is(id, word), ...(asked === undefined ? [] : [isFilled(ref(asked))])]),
    ),
  );
  return ifAny(wrong, '"Fail"', ifAny(exempt, '"Not required"', missing));
}

/** What a row's measured values and words come to, once its readings are there. */
function measuredBy(
  { columns, words, accepted, enough }: Judging,
  ref: Reference,
  lineup: Lineup,
): string {
  const { byLimit, failsBy, passesBy } = comparisonsIn(columns);
  const fails = (comparison: Comparison) =>
    all([...appliesBy(comparison, ref), failsBy(comparison, ref)]);
  const isMetBy = (comparison: Comparison) =>
    any([...fallsAwayBy(comparison, ref), passesBy(comparison, ref, lineup)]);
  /** Whether a row may be left with nothing to accept it by. */
  const allMayFall =
    accepted.length > 0 &&
    accepted.every(
      ({ when, excusable, insteadOf }) =>
        when !== undefined || insteadOf !== undefined || excusable === true,
    );
  const passed = [
    ...accepted.map(isMetBy),
    ...(allMayFall ? [any(accepted.map((one) => all(appliesBy(one, ref))))] : []),
    ...words.map(({ id, sound, asked }) =>
      any([
        ...(asked === undefined ? [] : [blank(ref(asked))]),
        ...sound.map((word) => `${ref(id)}=${quoted(word)}`),
      ]),
    ),
    `${gear("DOUBTFUL", ref("remarks"))}="No"`,
  ];
  const worst = ifAny(
    accepted.filter(({ outright, asks }) => !outright && !asks).map(fails),
    '"Fail"',
    `IF(${all(passed)},"Pass","Inconclusive")`,
  );
  const unproved = [
    ...enough.map((comparison) =>
      all([...appliesBy(comparison, ref), `${byLimit(comparison, ref)}<>"Pass"`]),
    ),
    ...outsideRangeBy(columns, ref, lineup),
    ...tooSmallBy(columns, ref),
  ];
  return ifAny(
    accepted.filter(({ outright }) => outright).map(fails),
    '"Fail"',
    ifAny(unproved, '"Inconclusive"', worst),
  );
}

const ifAny = (tests: readonly string[], then: string, otherwise: string): string =>
  tests.length > 0 ? `IF(${any(tests)},${then},${otherwise})` : otherwise;
const joined = (name: string) => (tests: readonly string[]) =>
  tests.length === 1 ? String(tests[0]) : `${name}(${tests.join(",")})`;
const all = joined("AND");
const any = joined("OR");
