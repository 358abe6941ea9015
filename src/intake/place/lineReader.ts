import type { Told } from "../../messages/told";
import { splitReading } from "../../quantities/reading/splitReading";
import type { Result } from "../../quantities/result";
import type { CellValue, Column } from "../../records/kind";
import type { ExportRow } from "../columns/unpivot";
import type { ExportBlock } from "../table/exportTable";
import type { Written } from "../table/written";
import { factsOf } from "../table/writtenFacts";

/** One cell for a record: the column's id, and the value. */
export type Entry = readonly [column: string, value: CellValue];

/** A cell read, and the comment that stood beside its number. */
export interface ReadCell {
  readonly entry: Entry;
  readonly comment?: string;
}

/** A text under its title, and what has been found out about it; the same text under the same title is one. */
export interface ParsedField extends Written {
  /** What the text means by the user's own word or by the lineup. */
  readonly name: string;
  /** What tells which quantity it is of: its unit; of a test its name; of other words nothing. */
  readonly mark: string;
  /** Whether the text will be the same thing again when it comes again. */
  readonly kept: boolean;
  /** The column of the records that it was last read for, and what it comes to there. */
  column?: Column;
  read?: Result<ReadCell, Told>;
}

/** Which fields lines have that are filled in the same columns, and what has been found out about them. */
export interface LineShape<Found> {
  /** Where each field stands among the parts of such a line. */
  readonly at: ReadonlyMap<string, number>;
  /** The parts that say where a line belongs, those first that count first; −1 for what it does not say. */
  readonly place: { readonly objects: readonly number[]; readonly others: readonly number[] };
  readonly date: number;
  readonly time: number;
  /** By the marks of a line's parts, and what was found for the line before. */
  readonly found: Map<string, Found>;
  last?: { readonly marks: readonly string[]; readonly found: Found };
}

/** A line: its parts in the order of its shape's fields. They are valid until the next line is read. */
export interface Line<Found> {
  readonly shape: LineShape<Found>;
  readonly parts: readonly ParsedField[];
}

/** Each part of such lines: a fact from above, or which of the recognised columns it stands in. */
interface Sourced<Found> extends LineShape<Found> {
  readonly sources: readonly (ParsedField | number)[];
}

/** So many texts of a column are known at once, every second of a day among them, and none that is longer. */
const MAX_KNOWN = 100_000;
const LONGEST_KNOWN = 100;

/**
 * Makes the reader of a table's lines. What the block above the table says holds for every line that does
 * not say it itself. Each text of a column is looked into once, so that a long file costs little more
 * than its parting into cells.
 *
 * @param meant what a text of a field means
 */
export const lineReader = <Found>(
  { header, columns, facts: told }: ExportBlock,
  meant: (field: string, text: string) => string,
): ((row: ExportRow) => Line<Found>) => {
  const facts = (told ?? factsOf(header)).map((one) => parsed(one, meant, true));
  const recognised = columns.flatMap(({ field, ...column }) =>
    field === undefined ? [] : [{ ...column, field, known: new Map<string, ParsedField>() }],
  );
  const indices = recognised.map(({ index }) => index);
  const filled = recognised.map(() => false);
  const shapes = new Map<string, Sourced<Found>>();
  let shape: Sourced<Found> | undefined;
  const parts: ParsedField[] = [];

  const shapeNow = (): Sourced<Found> => {
    const key = filled.map((is) => (is ? "1" : "0")).join("");
    const known = shapes.get(key);
    if (known) return known;
    const source = new Map<string, ParsedField | number>(facts.map((one) => [one.field, one]));
    recognised.forEach(({ field }, at) => {
      if (filled[at]) source.set(field, at);
    });
    const at = new Map([...source.keys()].map((field, at): [string, number] => [field, at]));
    const where = (field: string) => at.get(field) ?? -1;
    const made = {
      sources: [...source.values()],
      at,
      place: {
        objects: ["object", "circuit", "section"].map(where).filter((at) => at >= 0),
        others: ["part", "position", "stage", "operation", "subpart"].map(where),
      },
      date: where("date"),
      time: where("time"),
      found: new Map<string, Found>(),
    };
    shapes.set(key, made);
    return made;
  };
  const last: (ParsedField | undefined)[] = recognised.map(() => undefined);
  const partOf = (column: number, text: string): ParsedField => {
    const above = last[column];
    if (above !== undefined && above.text === text) return above;
    const { field, title, unit, index, known } = recognised[column] as (typeof recognised)[number];
    let part = known.get(text);
    if (part === undefined) {
      const kept = known.size < MAX_KNOWN && text.length <= LONGEST_KNOWN;
      part = parsed({ field, title, text, unit, index }, meant, kept);
      if (kept) known.set(text, part);
    }
    last[column] = part;
    return part;
  };

  return ({ cells }) => {
    let same = shape !== undefined;
    for (let at = 0; at < recognised.length; at++) {
      const text = cells[indices[at] as number];
      const is = text !== undefined && text !== "" && !isDash(text);
      if (filled[at] !== is) {
        filled[at] = is;
        same = false;
      }
    }
    if (!same || shape === undefined) shape = shapeNow();
    const { sources } = shape;
    parts.length = sources.length;
    for (let at = 0; at < sources.length; at++) {
      const source = sources[at] as ParsedField | number;
      parts[at] =
        typeof source === "number"
          ? partOf(source, cells[indices[source] as number] as string)
          : source;
    }
    return { shape, parts };
  };
};

/** What is written where there is nothing to write. */
const isDash = (text: string): boolean => {
  const sign = text.charCodeAt(0);
  const isSign = sign === 0x2d || sign === 0x2013 || sign === 0x2014;
  return isSign && text.length < 4 && /^[-–—]+$/.test(text);
};

const parsed = (
  one: Written,
  meant: (field: string, text: string) => string,
  kept: boolean,
): ParsedField => ({ ...one, name: nameOf(one, meant), mark: markOf(one), kept });

const nameOf = ({ field, text }: Written, meant: (field: string, text: string) => string) =>
  field === "section" ? meant("object", text) : NAMES.has(field) ? meant(field, text) : text;

/** Fields that name something that a user or the lineup may know by another name. */
const NAMES: ReadonlySet<string> = new Set([
  "object",
  "circuit",
  "part",
  "position",
  "stage",
  "test",
]);

const markOf = ({ field, text, unit }: Written): string => {
  if (field === "test") return text;
  if (WORDS.has(field)) return "";
  if (PLAIN_NUMBER.test(text)) return unit ?? "";
  const own = splitReading(text)?.unit ?? "";
  return own.length < 12 ? own : "?";
};

/** Fields that hold no quantity. */
const WORDS: ReadonlySet<string> = new Set(
  "object circuit section part position stage operation date time by instrument serial remarks discharge unit".split(
    " ",
  ),
);

const PLAIN_NUMBER = /^-?\d+(?:[.,]\d+)?$/;
