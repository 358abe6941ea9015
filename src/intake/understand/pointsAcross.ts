import { pointKey } from "../words/pointKey";
import { positionReader } from "../words/readPosition";
import type { SeenColumn } from "./columnScore";
import { NEUTRAL } from "./columnSenses";
import type { KnownKind } from "./knowledge";
import type { NamedPoint } from "./namedPoints";
import { hasMeaning } from "./nameTokens";

/** A point of a test that a title names, and whether it names nothing else. */
export interface PointAcross {
  readonly point: string;
  readonly isAll: boolean;
  /** The element of a relay that stands before its point: `51` of `51 time at 2x`. */
  readonly element?: string;
}

/** Points of a test that titles name, by column. */
export const pointsAcross = (
  columns: readonly SeenColumn[],
  { points, named, places }: KnownKind,
): ReadonlyMap<number, PointAcross> => {
  if (points.size === 0) return new Map();
  const poleOf = positionReader(columns.flatMap(({ title }) => title.position ?? []));
  return new Map(
    columns.flatMap(({ index, title, cells }): [number, PointAcross][] => {
      if (cells.numeric < 0.5) return [];
      const multiple = multipleIn(title, points);
      const point = multiple === undefined ? nameIn(title, named, poleOf) : undefined;
      const element = elementIn(title.text, places);
      const found =
        multiple === undefined
          ? point
          : { point: multiple, isAll: true, ...(element !== undefined && { element }) };
      return found === undefined ? [] : [[index, found]];
    }),
  );
};

/** The word that a title begins with, where parts of the records have it among their own. */
const elementIn = (text: string, places: KnownKind["places"]): string | undefined => {
  const [first = ""] = text.split(/[\s:,–-]/);
  const isElement = /^\d{2}\p{L}{0,2}$/u.test(first);
  const word = first.toLowerCase();
  return isElement && places.some(({ tokens }) => tokens.some((token) => token.text === word))
    ? first
    : undefined;
};

/** A multiple, a share or a pick-up. */
const multipleIn = ({ text, senses }: SeenColumn["title"], points: KnownKind["points"]) => {
  const [multiple] = /\d+(?:[.,]\d+)?\s*[x×%]|[x×]\s*\d+(?:[.,]\d+)?/iu.exec(text) ?? [];
  const point = multiple ?? (senses.has("pickup") ? "pick-up" : undefined);
  return point !== undefined && points.has(pointKey(point)) ? point : undefined;
};

/**
 * The one named point that has the words of a title among its own, of the same operation and pole. Words
 * that no point has are of what is read there, as its background.
 */
const nameIn = (
  { words, unknown, operation, position }: SeenColumn["title"],
  named: readonly NamedPoint[],
  poleOf: ReturnType<typeof positionReader>,
): PointAcross | undefined => {
  const said = words.filter(
    ({ senses }) => senses.length > 0 && !senses.some((sense) => NEUTRAL.has(sense)),
  );
  const telling = said.filter((word) => named.some(({ tokens }) => hasMeaning(tokens, word)));
  if (telling.length === 0 || unknown > 0) return undefined;
  const read = position === undefined ? undefined : poleOf(position);
  const pole = read?.ok ? read.value : undefined;
  const [only, ...others] = named.filter(
    (point) =>
      point.operation === operation &&
      point.pole === pole &&
      telling.every((word) => hasMeaning(point.tokens, word)),
  );
  return only !== undefined && others.length === 0
    ? { point: only.text, isAll: telling.length === said.length }
    : undefined;
};
