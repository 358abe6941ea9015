import type { Unit } from "../../quantities/units";
import { type Column, NOT_APPLICABLE, type Own } from "../kind";

/** A number that people measure. */
export const measured = (
  id: string,
  header: string,
  unit: Unit,
  more: Partial<Column> & { readonly most?: number } = {},
): Column => {
  const { most = 1_000_000, ...column } = more;
  return {
    id,
    header,
    role: "entry",
    width: 10,
    unit,
    accepts: { type: "number", least: 0, most },
    need: "reading",
    ...column,
  };
};

/** A limit of the maker's or project's; where the lineup gives none, people type it. */
export const givenLimit = (
  id: string,
  header: string,
  unit: Unit | undefined,
  own: Own | undefined,
  more: Partial<Column> = {},
): Column => ({
  id,
  header,
  role: "limit",
  width: 10,
  ...(unit === undefined ? {} : { unit }),
  ...(own === undefined ? {} : { own }),
  help: "Where the lineup gives none, type the maker's value here.",
  value: (row) => row[id] ?? null,
  ...more,
});

/** A limit that a row does without where neither maker nor project gives one: it is judged by the rest. */
export const limitWhereGiven = (
  id: string,
  header: string,
  unit: Unit | undefined,
  own: Own,
): Column =>
  givenLimit(id, header, unit, own, {
    help: "n/a where neither maker nor project gives one.",
    value: (row) => row[id] ?? NOT_APPLICABLE,
  });

/** The words that name which table a row stands in: panel and part. */
export const named = (part: string, width = 22): Column[] => [
  { id: "object", header: "Panel", role: "key", width: 13 },
  { id: "part", header: part, role: "key", width },
];
