import type { Lineup } from "../lineup/lineup";
import { instrumentsOfRow } from "./instruments";
import { judged } from "./judged";
import type { CellValue, Comparison, Reference, Row } from "./kind";

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

/** Uncertainty of a row's readings as a fraction, by the least accurate of its instruments; 0 under simple acceptance. */
const guardOf = (row: Row, lineup: Lineup): number =>
  lineup.decisionRule === "guarded"
    ? Math.max(
        0,
        ...instrumentsOfRow(row, lineup).map(({ accuracyPercent = 0 }) => accuracyPercent),
      ) / 100
    : 0;

/** The limit that a reading has to keep to leave no doubt: inside the limit by its uncertainty. */
const inside = (limit: number, guard: number, sense: Comparison["sense"]): number =>
  sense === "least" ? limit / (1 - guard) : limit / (1 + guard);

/**
 * Whether a value that meets its limit lies so near to it that its uncertainty reaches across: under guarded
 * acceptance (ILAC-G8:09/2019, clause 4.2.2, read; ISO/IEC Guide 98-4) it is then no pass.
 */
export const straddles = (comparison: Comparison, row: Row, lineup: Lineup): boolean => {
  const guard = isGuarded(comparison) ? guardOf(row, lineup) : 0;
  const limit: CellValue = row[comparison.limit] ?? null;
  if (guard === 0 || typeof limit !== "number") return false;
  const { value, sense, tolerance, unit } = comparison;
  return judged(row[value], inside(limit, guard, sense), sense, tolerance, unit) !== "Pass";
};

/** The same limit in a formula; the limit itself under simple acceptance. */
export const guardedLimit = (
  comparison: Comparison,
  ref: Reference,
  { decisionRule }: Lineup,
  hasInstrument: boolean,
): string => {
  const limit = ref(comparison.limit);
  if (decisionRule !== "guarded" || !hasInstrument || !isGuarded(comparison)) return limit;
  const ids = `";"&SUBSTITUTE(SUBSTITUTE(GearInstruments[Id]," ",""),",",";")&";"`;
  const named = `";"&SUBSTITUTE(SUBSTITUTE(${ref("instrument")}," ",""),",",";")&";"`;
  const isNamed = `ISNUMBER(SEARCH(${ids},${named}))`;
  const guard = `IFERROR(SUMPRODUCT(MAX(${isNamed}*(GearInstruments[Id]<>"")*GearInstruments[${ACCURACY}]))/100,0)`;
  return `${limit}/(1${comparison.sense === "least" ? "-" : "+"}${guard})`;
};
