import { keyIds } from "../../records/kind";
import type { RecordRows } from "../rows/recordRows";
import { operationOf } from "../words/operationIn";
import { pointKey } from "../words/pointKey";
import { positionReader } from "../words/readPosition";
import { sensesOf } from "../words/senses";
import type { SeenColumn } from "./columnScore";
import { NEUTRAL } from "./columnSenses";
import type { KnownKind } from "./knowledge";
import { hasMeaning, type NameToken, nameTokens } from "./nameTokens";

/** A point of a test that goes by a name, such as a quantity of a breaker's travel or a method. */
export interface NamedPoint {
  /** As rows are known by it. */
  readonly text: string;
  readonly tokens: readonly NameToken[];
  readonly operation: "closing" | "opening" | undefined;
  /** The pole that it is of, L1 to L3, where it is of one. */
  readonly pole?: string;
}

/** The points that rows go by that have names and no figures, each once. */
export const namedPoints = (tables: readonly RecordRows[]): NamedPoint[] => {
  const points = new Map<string, NamedPoint>();
  for (const { kind, rows } of tables) {
    const [id, poleId] = keyIds(kind).filter((one) => !["object", "part", "stage"].includes(one));
    if (id === undefined) continue;
    const poleOf = positionReader(rows.map((row) => String((poleId && row[poleId]) ?? "")));
    for (const row of rows) {
      const [name, pole] = [id, poleId].map((one) => String((one && row[one]) ?? "").trim());
      if (!name || /\d/.test(name)) continue;
      const read = poleOf(pole ?? "");
      const text = `${name} ${pole}`.trim();
      points.set(text, {
        text,
        tokens: nameTokens(name),
        operation: operationOf(sensesOf(name).senses),
        ...(read.ok && { pole: read.value }),
      });
    }
  }
  return [...points.values()];
};

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
