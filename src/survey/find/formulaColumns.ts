import { parseA1Range } from "@borgar/fx/xlsx";
import type { Cell, SheetView } from "../read/cells";
import type { Concept } from "../words/words";
import type { SurveyColumn } from "./block";

type Under = (at: number) => readonly Cell[];

/** What a reading comes to against what was called for, without brackets: "E4/D4-1*100", "E4-D4/D4". */
const OFF = [
  /^(?:100\*)?(\$?[A-Z]{1,3}\$?\d{1,7})\/(\$?[A-Z]{1,3}\$?\d{1,7})(?:\*100)?-1(?:00)?(?!\d)/i,
  /^(?:100\*)?(\$?[A-Z]{1,3}\$?\d{1,7})-(\$?[A-Z]{1,3}\$?\d{1,7})\/\2(?!\d)/i,
];

/** The column of its own line that a formula names. */
const columnOf = (reference: string | undefined, { row }: Cell): number | undefined => {
  const at = reference === undefined ? undefined : parseA1Range(reference.replaceAll("$", ""));
  return at && at.top === row ? (at.left ?? undefined) : undefined;
};

interface Pair {
  readonly reading: number;
  readonly called: number;
}

const pairIn = (cell: Cell): Pair | undefined => {
  const formula = cell.formula?.slice(0, 80).replace(/[\s=()]|ROUND|ABS/gi, "") ?? "";
  const [, reading, called] =
    OFF.map((form) => form.exec(formula)).find((found) => found !== null) ?? [];
  const [one, other] = [columnOf(reading, cell), columnOf(called, cell)];
  return one === undefined || other === undefined ? undefined : { reading: one, called: other };
};

/** What nearly all formulas of a column hold against each other. */
const pairOf = (cells: readonly Cell[]): Pair | undefined => {
  const pairs = cells.flatMap((cell) => pairIn(cell) ?? []);
  const [first] = pairs;
  const alike = pairs.filter(
    ({ reading, called }) => reading === first?.reading && called === first.called,
  );
  return alike.length > cells.length * 0.7 ? first : undefined;
};

/** Concepts of titles that are words for numbers as well: a torque that was "Set" is no test set. */
const WORDED: readonly (Concept | undefined)[] = [undefined, "instrument", "part", "name", "by"];

/** Readings and what was called for, as the formulas of their error tell them where their titles do not: "Book | Set | Off %". */
export const withErrorsOf = (
  view: SheetView,
  columns: readonly SurveyColumn[],
  under: Under,
): readonly SurveyColumn[] => {
  if (view.turned) return columns;
  const pair = columns
    .filter(({ concept, computed }) => computed && (concept === "error" || concept === "spread"))
    .map(({ at }) => pairOf(under(at)))
    .find((found) => found !== undefined);
  const [reading, called] = [pair?.reading, pair?.called].map((place) =>
    columns.find(({ at, numbers }) => at === place && numbers),
  );
  const isReading = WORDED.includes(reading?.concept) || reading?.concept === "reading";
  const isCalled = WORDED.includes(called?.concept) || called?.concept === "required";
  if (!reading || !called || !isReading || !isCalled) return columns;
  return columns.map((column) =>
    column === reading
      ? { ...column, concept: "reading" as const }
      : column === called
        ? { ...column, concept: "required" as const }
        : column,
  );
};
