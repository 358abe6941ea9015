import type { Lineup } from "../lineup/lineup";
import { unknownAccuracy } from "../standards/practice";
import { instrumentsOfRow } from "./instruments";
import { judged } from "./judged";
import type { CellValue, Column, Comparison, Reference, Row } from "./kind";

/** Title of the instruments' accuracy on their sheet. */
export const ACCURACY = "Accuracy ± %";

/**
 * Whether the decision rule can be asked of a comparison: of a measured quantity that is to lie above or below a
 * limit, whose uncertainty is that of its instrument. An error in percent carries another.
 */
const isGuarded = ({ sense, unit, asks, measured }: Comparison): boolean =>
  (sense === "least" || sense === "most") &&
  (unit !== undefined || measured === true) &&
  unit !== "%" &&
  !asks;

/**
 * Uncertainty of a row's readings as a fraction, by the least accurate of its instruments; where none is named, or
 * nobody says how accurate it is, what such instruments are taken to have.
 */
const guardOf = (row: Row, lineup: Lineup): number => {
  const known = instrumentsOfRow(row, lineup).map(
    ({ accuracyPercent = unknownAccuracy.value }) => accuracyPercent,
  );
  return (known.length > 0 ? Math.max(...known) : unknownAccuracy.value) / 100;
};

/** The limit that a reading has to keep to leave no doubt: inside the limit by its uncertainty. */
const inside = (limit: number, guard: number, sense: Comparison["sense"]): number =>
  sense === "least" ? limit / (1 - guard) : limit / (1 + guard);

/**
 * Whether a value that meets its limit lies so near to it that its uncertainty reaches across: under guarded
 * acceptance (ILAC-G8:09/2019, clause 4.2.2, read; ISO/IEC Guide 98-4) it is then no pass.
 */
export const straddles = (
  comparison: Comparison,
  columns: readonly Column[],
  row: Row,
  lineup: Lineup,
): boolean => {
  if (lineup.decisionRule !== "guarded" || !isGuarded(comparison) || !hasInstrument(columns))
    return false;
  const limit: CellValue = row[comparison.limit] ?? null;
  if (typeof limit !== "number") return false;
  const { value, sense, tolerance, unit } = comparison;
  const last = inside(limit, guardOf(row, lineup), sense);
  return judged(row[value], last, sense, tolerance, unit) !== "Pass";
};

/** Whether the rows of a kind name what they were measured with. */
export const hasInstrument = (columns: readonly Column[]): boolean =>
  columns.some(({ id }) => id === "instrument");

/** The same limit in a formula; the limit itself under simple acceptance. */
export const guardedLimit = (
  comparison: Comparison,
  ref: Reference,
  { decisionRule }: Lineup,
  isNamed: boolean,
): string => {
  const limit = ref(comparison.limit);
  if (decisionRule !== "guarded" || !isNamed || !isGuarded(comparison)) return limit;
  const ids = `";"&SUBSTITUTE(SUBSTITUTE(GearInstruments[Id]," ",""),",",";")&";"`;
  const named = `";"&SUBSTITUTE(SUBSTITUTE(${ref("instrument")}," ",""),",",";")&";"`;
  const isThere = `ISNUMBER(SEARCH(${ids},${named}))*(GearInstruments[Id]<>"")`;
  const accuracy = `GearInstruments[${ACCURACY}]`;
  // A blank accuracy counts as 0 here, and so does an instrument that the row does not name: 1/0 is neither.
  const known = `SUMPRODUCT(MAX(${isThere}*(${accuracy}+(${accuracy}=0)*${unknownAccuracy.value})))`;
  const guard = `IFERROR(1/(1/${known}),${unknownAccuracy.value})/100`;
  return `${limit}/(1${comparison.sense === "least" ? "-" : "+"}${guard})`;
};
