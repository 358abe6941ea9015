import type { CellValue } from "../records/kind";
import { a1 } from "../sheets/cells/address";
import { ownCells } from "../sheets/cells/ownCells";
import type { SheetCells, Snapshot } from "../sheets/snapshot";
import type { Basis } from "../standards/criterion";
import { seriesI, seriesII } from "../standards/iec62271-1.2017";
import { factory } from "../standards/ieeeC37.20.2.2015";
import { RATED_RANGE } from "./checkSurvey";
import { quantitiesIn } from "./find/findFacts";
import { quantityIn } from "./read/cells";
import { hasWord, kindsIn } from "./words/sheetWords";

/** What a cell of the workbook says of a question, to be confirmed by a person. */
export interface Guess<T> {
  readonly value: T;
  readonly sheet: string;
  readonly address: string;
  /** What is written there. */
  readonly text: string;
}

/** What the cells of a workbook say of its rated voltage, kV, and of its basis. */
export interface GuessedAnswers {
  readonly ratedkV?: Guess<number>;
  /** By words of the workbook, or, where it has none, by its rated voltage. */
  readonly basis?: Guess<Basis> & { readonly by: "words" | "rated" };
}

interface Written extends Omit<Guess<unknown>, "value"> {
  /** The cell to its right, the value where this one is a label. */
  readonly beside: CellValue;
}

const MAX_TEXT = 200;
const WORTH_READING = /\dk?\s?-?kV|kV|NETA|ANSI|IEEE|IEC|VDE|62271/i;

function* textsOf(name: string, cells: SheetCells): Generator<Written> {
  for (let row = 0; row < cells.rowCount; row++)
    for (let column = 0; column < cells.columnCount; column++) {
      const value = cells.cell(row, column);
      if (typeof value !== "string" || value.length > MAX_TEXT) continue;
      const beside = cells.cell(row, column + 1);
      const text = value.trim();
      if (WORTH_READING.test(text) || WORTH_READING.test(String(beside ?? "")))
        yield { sheet: name, address: a1(row, column), text, beside };
    }
}

const IEC_RATINGS = new Set(seriesI.rows.map(({ ratedkV }) => ratedkV));
const NETA_RATINGS = new Set([...seriesII.rows, ...factory.rows].map(({ ratedkV }) => ratedkV));

/** Direct and alternating voltages, shares and durations: those of a test. */
const OF_A_TEST =
  /\b[dac]\.? ?c\.?(?![\p{L}])|gleich|wechsel|%|\d ?(?:s|sec|min|minute\p{L}*|sek|seg)\b/iu;

const isRating = (kV: number) => kV >= RATED_RANGE[0] && kV <= RATED_RANGE[1];

/** How much speaks for a figure being the rated voltage, in a clause that says nothing of a test. */
const weightOf = (kV: number, clause: string): number => {
  if (!isRating(kV) || OF_A_TEST.test(clause) || kindsIn(clause).length > 0) return 0;
  return (hasWord(clause, "rated") ? 2 : 0) + (IEC_RATINGS.has(kV) || NETA_RATINGS.has(kV) ? 1 : 0);
};

/** The rated voltages that a text, or a label with its value, may name, each with what speaks for it. */
const ratingsIn = ({
  text,
  beside,
  ...where
}: Written): { guess: Guess<number>; weight: number }[] => {
  const named = text
    .split(/[;|–]|\. /)
    .flatMap((clause) =>
      quantitiesIn(clause).flatMap(({ number, unit }) =>
        unit === "kV"
          ? [{ guess: { value: number, text, ...where }, weight: weightOf(number, clause) }]
          : [],
      ),
    );
  // A label without a word for a rating may name any voltage.
  const value = hasWord(text, "rated") ? valueBeside(text, beside) : undefined;
  return value === undefined
    ? named
    : [
        ...named,
        { guess: { value, text: `${text} ${beside}`, ...where }, weight: weightOf(value, text) },
      ];
};

/** The kilovolts beside a label that names their unit, or that carry it themselves. */
const valueBeside = (label: string, beside: CellValue): number | undefined => {
  if (typeof beside === "number") return /\bkV\b/.test(label) ? beside : undefined;
  const read = quantityIn(String(beside ?? "").trim());
  return read?.unit === "kV" ? read.number : undefined;
};

const BASIS_WORDS: readonly (readonly [Basis, RegExp])[] = [
  ["NETA", /\b(?:NETA|ANSI|IEEE|C37)\b/],
  ["IEC", /\b(?:IEC|VDE|62271)\b/],
];

/** The guess that most speaks for; of two that are alike, none. */
const bestOf = <T>(votes: readonly { guess: Guess<T>; weight: number }[]): Guess<T> | undefined => {
  const sums = new Map<T, { guess: Guess<T>; best: number; times: number }>();
  for (const { guess, weight } of votes) {
    const known = sums.get(guess.value) ?? { guess, best: 0, times: 0 };
    const better = weight > known.best;
    sums.set(guess.value, {
      guess: better ? guess : known.guess,
      best: Math.max(weight, known.best),
      times: known.times + 1,
    });
  }
  const [first, second] = [...sums.values()].sort(
    (one, other) => other.best - one.best || other.times - one.times,
  );
  const isClear = !second || first?.best !== second.best || first.times > second.times;
  return isClear ? first?.guess : undefined;
};

/** A rated voltage that only one of the two bodies of standards has. */
const basisOf = ({ value, ...where }: Guess<number>): GuessedAnswers["basis"] => {
  const [iec, neta] = [IEC_RATINGS.has(value), NETA_RATINGS.has(value)];
  return iec === neta ? undefined : { value: iec ? "IEC" : "NETA", ...where, by: "rated" };
};

/**
 * Looks for what a workbook says of its rated voltage and its basis: "15 kV", "Rated voltage, kV | 15",
 * words such as NETA, ANSI or IEC; where none of these words is found, a rated voltage that only one of
 * the two has. Voltages of a test, with what is tested, DC, AC, a share or a duration beside them, do not
 * count. A guess is for a person to confirm.
 *
 * Rated voltages: IEC 62271-1 series I and II, IEEE C37.20.2, as in the tables of these standards.
 */
export function guessAnswers({ sheets }: Snapshot): GuessedAnswers {
  const texts = sheets.flatMap((sheet) => {
    const cells = ownCells(sheet);
    return cells ? [...textsOf(sheet.name, cells)] : [];
  });
  const ratedkV = bestOf(
    texts.flatMap((written) => ratingsIn(written).filter(({ weight }) => weight > 0)),
  );
  const said = bestOf(
    texts.flatMap(({ beside: _, ...where }) =>
      BASIS_WORDS.flatMap(([value, words]) => {
        return words.test(where.text) ? [{ guess: { value, ...where }, weight: 1 }] : [];
      }),
    ),
  );
  const basis = said ? { ...said, by: "words" as const } : ratedkV && basisOf(ratedkV);
  return { ...(ratedkV ? { ratedkV } : {}), ...(basis ? { basis } : {}) };
}
