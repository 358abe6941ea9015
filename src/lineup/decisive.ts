import type { Told } from "../messages/told";
import { type Result, refuse } from "../quantities/result";
import { type Criterion, sourceName } from "../standards/criterion";
import { bare, type Lineup } from "./lineup";

/**
 * A criterion of a standard as far as it may decide: one that stands here from memory decides nothing
 * until the lineup says that somebody has confirmed it against the standard.
 *
 * @returns the criterion; `none` for one from memory that nobody has confirmed, naming what to confirm
 */
export const decisive = <T>(
  { confirmed }: Pick<Lineup, "confirmed">,
  found: Result<Criterion<T>, Told>,
): Result<Criterion<T>, Told> => {
  if (!found.ok || found.value.source.certainty !== "memory") return found;
  const { value, source } = found.value;
  const name = sourceName(source);
  const by = confirmed.find(({ criterion }) => bare(criterion) === bare(name))?.by;
  return by === undefined
    ? refuse("none", ({ records }: Told) => records.unconfirmed(String(value), name))
    : { ok: true, value: { value, source: { ...source, certainty: "confirmed", by } } };
};
