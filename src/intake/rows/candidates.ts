import { keyIds, rowKey } from "../../records/kind";
import { anyWord } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import { positionReader } from "../words/readPosition";
import { readStage } from "../words/readStage";
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
  const positionId = positionIdOf(keys);
  // The table's own letters tell how the lineup calls its phases.
  const readKey = positionReader(positionsOf(table));
  return table.rows.map((row, index) => {
    const text = (id: string | undefined) => String((id && row[id]) ?? "").trim();
    const position = readKey(text(positionId));
    return {
      table,
      row: index,
      object: text("object"),
      part: text("part"),
      position: position.ok ? position.value : text(positionId),
      stage: readStage(text("stage")) ?? text("stage"),
      name: rowKey(row, keys),
    };
  });
};

const positionIdOf = (keys: readonly string[]): string | undefined =>
  keys.find((id) => !["object", "part", "stage"].includes(id));

/** Every position that the rows of a table have. */
export const positionsOf = ({ kind, rows }: RecordRows): string[] => {
  const id = positionIdOf(keyIds(kind));
  return id === undefined ? [] : rows.map((row) => String(row[id] ?? "").trim());
};

const PLACE = new RegExp(`^${anyWord(({ places }) => places)}$`);

/** A panel's or section's name without case, spaces and punctuation, and without words such as "panel" before it. */
export const objectKey = (text: string): string => {
  const words = plainWords(text).split(" ");
  const from = words.findIndex((word) => !PLACE.test(word));
  return (from < 0 ? words : words.slice(from)).join("");
};
