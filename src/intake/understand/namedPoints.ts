import { keyIds } from "../../records/kind";
import type { RecordRows } from "../rows/recordRows";
import { operationOf } from "../words/operationIn";
import { positionReader } from "../words/readPosition";
import { sensesOf } from "../words/senses";
import { type NameToken, nameTokens } from "./nameTokens";

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
