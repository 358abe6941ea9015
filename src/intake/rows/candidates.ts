import { memoizeText } from "../../quantities/memoizeText";
import { keyIds, type Row, rowKey } from "../../records/kind";
import { anyWord } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import { positionReader } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { type Sense, sensesOf } from "../words/senses";
import type { RecordRows } from "./recordRows";

/** A row of a record table. */
export interface FoundRow<T extends RecordRows> {
  readonly table: T;
  readonly row: number;
}

/** A row of a record table by its keys, made comparable. Keys that its kind does not have are blank. */
export interface Candidate<T extends RecordRows> extends FoundRow<T> {
  readonly object: string;
  readonly part: string;
  readonly position: string;
  readonly stage: string;
  readonly name: string;
}

/** The rows of a table by their keys. */
export const candidatesOf = <T extends RecordRows>(table: T): Candidate<T>[] => {
  const keys = keyIds(table.kind);
  const ids = positionIdsOf(keys);
  // The table's own letters tell how the lineup calls its phases.
  const readKey = positionReader(positionsOf(table));
  return table.rows.map((row, index) => {
    const text = (id: string | undefined) => String((id && row[id]) ?? "").trim();
    const written = positionIn(row, ids);
    const position = readKey(written);
    return {
      table,
      row: index,
      object: text("object"),
      part: text("part"),
      position: position.ok ? position.value : written,
      stage: readStage(text("stage")) ?? text("stage"),
      name: rowKey(row, keys),
    };
  });
};

/** What a row is by besides panel, part and stage: a phase, a point of a test, or a quantity and its pole. */
const positionIdsOf = (keys: readonly string[]): readonly string[] =>
  keys.filter((id) => !["object", "part", "stage"].includes(id));

const positionIn = (row: Row, ids: readonly string[]): string =>
  ids
    .map((id) => String(row[id] ?? "").trim())
    .join(" ")
    .trim();

/** Every position that the rows of a table have. */
export const positionsOf = ({ kind, rows }: RecordRows): string[] => {
  const ids = positionIdsOf(keyIds(kind));
  return ids.length === 0 ? [] : rows.map((row) => positionIn(row, ids));
};

const PLACE = new RegExp(`^${anyWord(({ places }) => places)}$`);

/**
 * A panel's or section's name without case, spaces and punctuation, and without words such as "panel" or
 * "jeu de barres" before it.
 */
export const objectKey = memoizeText((text: string): string => {
  const words = plainWords(text).split(" ");
  const spoken = leadIn(text);
  const from = Math.max(
    spoken.length,
    words.findIndex((word) => !PLACE.test(word)),
  );
  return (from >= words.length ? words : words.slice(from)).join("");
});

/** The words before a name that say that a panel or a section is meant. */
const leadIn = (text: string): readonly Sense[] => {
  const lead: Sense[] = [];
  for (const { text: word, senses } of sensesOf(text).words) {
    const sort = SORTS.find((one) => senses.includes(one));
    if (sort === undefined) break;
    lead.push(...word.split(" ").map(() => sort));
  }
  return lead;
};
const SORTS = ["panel", "section"] as const;

/** Whether two names may be of the same: that of a panel is none of a section, whatever stands after it. */
export const isSameSort = (one: string, other: string): boolean => {
  const [[first], [second]] = [leadIn(one), leadIn(other)];
  return first === undefined || second === undefined || first === second;
};
