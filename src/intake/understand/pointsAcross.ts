import { pointKey } from "../words/pointKey";
import { positionReader } from "../words/readPosition";
import type { SeenColumn } from "./columnScore";
import { NEUTRAL } from "./columnSenses";
import type { KnownKind } from "./knowledge";
import type { NamedPoint } from "./namedPoints";
import { hasMeaning } from "./nameTokens";

/** Points of a test that titles name, by column. */
export const pointsAcross = (
  columns: readonly SeenColumn[],
  { points, named }: KnownKind,
): ReadonlyMap<number, string> => {
  if (points.size === 0) return new Map();
  const poleOf = positionReader(columns.flatMap(({ title }) => title.position ?? []));
  return new Map(
    columns.flatMap(({ index, title, cells }): [number, string][] => {
      if (cells.numeric < 0.5) return [];
      const point = multipleIn(title, points) ?? nameIn(title, named, poleOf);
      return point === undefined ? [] : [[index, point]];
    }),
  );
};

/** A multiple, a share or a pick-up. */
const multipleIn = ({ text, senses }: SeenColumn["title"], points: KnownKind["points"]) => {
  const [multiple] = /\d+(?:[.,]\d+)?\s*[x×%]|[x×]\s*\d+(?:[.,]\d+)?/iu.exec(text) ?? [];
  const point = multiple ?? (senses.has("pickup") ? "pick-up" : undefined);
  return point !== undefined && points.has(pointKey(point)) ? point : undefined;
};

/** The one named point that has every word of a title among its own, of the same operation and pole. */
const nameIn = (
  { words, unknown, operation, position }: SeenColumn["title"],
  named: readonly NamedPoint[],
  poleOf: ReturnType<typeof positionReader>,
): string | undefined => {
  const telling = words.filter(
    ({ senses }) => senses.length > 0 && !senses.some((sense) => NEUTRAL.has(sense)),
  );
  if (telling.length === 0 || unknown > 0) return undefined;
  const read = position === undefined ? undefined : poleOf(position);
  const pole = read?.ok ? read.value : undefined;
  const [only, ...others] = named.filter(
    (point) =>
      point.operation === operation &&
      point.pole === pole &&
      telling.every((word) => hasMeaning(point.tokens, word)),
  );
  return others.length === 0 ? only?.text : undefined;
};
