import type { Lineup } from "../lineup/lineup";
import {
  isForAll,
  isGiven,
  type OwnLimit,
  ownCriterion,
  ownSourceText,
} from "../lineup/ownCriterion";
import type { Told } from "../messages/told";
import { storedWords } from "../messages/told";
import { memoizeFor } from "../quantities/memoizeFor";
import type { Result } from "../quantities/result";
import { type Criterion, sourceText } from "../standards/criterion";
import type { CellValue, Column, Own, OwnQuantity, Row } from "./kind";

type Names = readonly (string | OwnQuantity)[];

/**
 * Looks for the maker's or project's own value among the lineup's criteria, by one of these names: the
 * maker's, where both give one, as of a voltage, current or torque that gear is stressed with.
 */
export const ownOf = (...names: Names): Own => ownBy(undefined, names);

/**
 * The value that maker and project both accept, the highest of a `most`, the lowest of a `least`: the
 * stricter one where both give one, since the contract asks for either.
 */
export const strictestOf = (sense: "least" | "most", ...names: Names): Own =>
  stricterOf(sense, ownBy("maker", names), ownBy("project", names));

export const leastOf = (...names: Names): Own => strictestOf("least", ...names);
export const mostOf = (...names: Names): Own => strictestOf("most", ...names);

const ownBy = (giver: OwnLimit["from"] | undefined, names: Names): Own => {
  const quantities = names.map((one) => (typeof one === "string" ? { name: one } : one));
  const givenBy = memoizeFor((lineup: Lineup) =>
    quantities.filter(({ name }) => isGiven(lineup, name)),
  );
  return Object.assign(
    (row: Row, lineup: Lineup): OwnLimit | undefined =>
      firstOf(givenBy(lineup), ({ name, of }) =>
        (of?.(row) ?? true)
          ? ownCriterion(lineup, name, isForAll(lineup, name) ? "" : String(row.object), giver)
          : undefined,
      ),
    { quantities },
  );
};

/** A limit that is given in percent, as the fraction that its column holds. */
export const asFraction = (own: Own): Own =>
  Object.assign(
    (row: Row, lineup: Lineup) => {
      const found = own(row, lineup);
      return found && { ...found, value: found.value / 100 };
    },
    { quantities: own.quantities },
  );

/** What a plate says, else the lineup's criteria: for what is set or applied, not for a limit. */
export const plateOr = (plate: Own, own: Own): Own =>
  Object.assign((row: Row, lineup: Lineup) => plate(row, lineup) ?? own(row, lineup), {
    quantities: own.quantities,
  });

/**
 * What a plate says, or the lineup's criteria: where both limit a reading, the stricter one, since the
 * contract asks for either.
 */
export const stricterOf = (sense: "least" | "most", plate: Own, own: Own): Own =>
  Object.assign(
    (row: Row, lineup: Lineup) => {
      const [ofPlate, ofLineup] = [plate(row, lineup), own(row, lineup)];
      if (!ofPlate || !ofLineup) return ofPlate ?? ofLineup;
      const isStricter =
        sense === "most" ? ofLineup.value < ofPlate.value : ofLineup.value > ofPlate.value;
      return isStricter ? ofLineup : ofPlate;
    },
    { quantities: own.quantities },
  );

function firstOf<T, U>(all: readonly T[], find: (one: T) => U | undefined): U | undefined {
  for (const one of all) {
    const found = find(one);
    if (found !== undefined) return found;
  }
  return undefined;
}

/** The figure of a criterion as a cell; blank where the basis gives none. */
export const limitOf = (found: Result<Criterion, Told>): CellValue =>
  found.ok ? found.value.value : null;

/** Where a limit comes from in one line, or why there is none; blank text for no limit at all. */
export const sourceOf = (
  limit: OwnLimit | Criterion | Result<Criterion, Told> | undefined,
): string => {
  if (limit === undefined) return "";
  if ("document" in limit) return ownSourceText(limit);
  if ("source" in limit) return sourceText(limit.source);
  return limit.ok ? sourceText(limit.value.source) : limit.say(storedWords());
};

/** What stands for the source of a limit that the lineup does not give and people may type. */
export const TO_TYPE = "none given: type the value here and name its document in the remarks";

/** Id of the column that names the source of every limit of its row. */
export const SOURCES = "sources";

/** That column. */
export const sources = (
  named: (row: Row, lineup: Lineup) => readonly (readonly [limit: string, source: string])[],
): Column => ({
  id: SOURCES,
  header: "Sources of limits",
  role: "given",
  width: 64,
  value: (row, lineup) =>
    named(row, lineup)
      .map(([limit, source]) => `${limit}: ${source}`)
      .join("; "),
});
