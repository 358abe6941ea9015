import { quoted } from "../../quantities/quoted";
import { type Answer, answer, type Refusal, type Result, refuse } from "../../quantities/result";
import { keyIds, rowKey } from "../../records/kind";
import { PARTS } from "../words/languages/language";
import { anyWord, wholeWord } from "../words/phrases";
import { plainWords } from "../words/plainWords";
import { positionReader } from "../words/readPosition";
import { readStage } from "../words/readStage";
import { similar } from "../words/similar";
import type { Asked, Suggestion } from "./placement";
import type { RecordRows } from "./recordRows";
import { type Place, splitPlaces } from "./splitPlaces";

/** A refusal that may know which names come nearest to one that no row has. */
export interface Lost extends Refusal {
  /** The word that is not understood, where there is one. */
  readonly asked?: Pick<Suggestion, "field" | "written">;
  /** With it the names that come nearest, where some do. */
  readonly suggestion?: Omit<Suggestion, "lines">;
}

export type Finding<T extends RecordRows> = Answer<FoundRow<T>> | Lost;

/** A refusal with the word that is not understood, and the names that come nearest. */
export const lost = (
  field: Asked,
  written: string,
  names: readonly string[],
  reason: string,
): Lost => {
  const candidates = [...new Set(names)]
    .map((name) => ({ name, score: Math.round(100 * similar(written, name)) / 100 }))
    .filter(({ name, score }) => name !== "" && score >= LEAST_ALIKE)
    .sort((one, other) => other.score - one.score)
    .slice(0, MAX_SUGGESTED);
  const asked = { field, written };
  return {
    ...refuse("none", reason),
    asked,
    ...(candidates.length > 0 && { suggestion: { ...asked, candidates } }),
  };
};

const LEAST_ALIKE = 0.4;
const MAX_SUGGESTED = 5;
const MAX_ASKED = 200;

export interface FoundRow<T extends RecordRows> {
  readonly table: T;
  readonly row: number;
}

/** A row of a record table by its keys, made comparable. Keys that its kind does not have are blank. */
interface Candidate<T extends RecordRows> extends FoundRow<T> {
  readonly object: string;
  readonly part: string;
  readonly position: string;
  readonly stage: string;
  readonly name: string;
}

/**
 * Makes the search for the one row that a line belongs to, by panel or section, then combination or
 * pole, then stage, then part. A line that fits no row, or several, is refused with what would be right.
 *
 * A panel and its part in one cell are parted where that gives one row and no other.
 *
 * @param tables the record tables
 * @param positions every position that the export writes, by which its phase letters are known
 */
export const rowFinder = <T extends RecordRows>(
  tables: readonly T[],
  positions: Iterable<string>,
): ((place: Place, among: readonly T[]) => Finding<T>) => {
  const position = positionReader(positions);
  const objects = new Map(
    tables.map((table) => [table, some(table.rows.map((row) => String(row.object ?? "").trim()))]),
  );
  const byObject = new Map<string, Candidate<T>[]>();
  for (const one of tables.flatMap(candidatesOf)) {
    const key = objectKey(one.object);
    const sofar = byObject.get(key);
    if (sofar) sofar.push(one);
    else byObject.set(key, [one]);
  }

  // The nearest of many names takes a while to find; after so many unknown names none is looked for.
  let left = MAX_ASKED;
  const known = new Map<readonly T[], readonly string[]>();
  const namesAmong = (among: readonly T[]): readonly string[] => {
    left -= 1;
    if (left < 0) return [];
    const names = known.get(among) ?? [
      ...new Set(among.flatMap(({ rows }) => rows.map((row) => String(row.object ?? "").trim()))),
    ];
    known.set(among, names);
    return names;
  };

  const whole = (place: Place, among: readonly T[]): Finding<T> => {
    if (place.object === "")
      return refuse("none", 'names no panel or section; add a column "Panel".');
    const alike = (byObject.get(objectKey(place.object)) ?? []).filter(({ table }) =>
      among.includes(table),
    );
    const verbatim = alike.filter(({ object }) => object === place.object);
    const ofObject = verbatim.length > 0 ? verbatim : alike;
    const other = ofObject.find(({ object }) => object !== ofObject[0]?.object);
    if (other)
      return lost(
        "object",
        place.object,
        ofObject.map(({ object }) => object),
        `panel or section ${quoted(place.object)} could be ${some(ofObject.map(({ object }) => object))}; write it as it stands there.`,
      );
    if (ofObject.length === 0)
      return lost(
        "object",
        place.object,
        namesAmong(among),
        `panel or section ${quoted(place.object)} has no row. ${
          among
            .flatMap((table) =>
              objects.get(table) ? `${table.kind.sheet} has ${objects.get(table)}` : [],
            )
            .join("; ") || "The lineup needs no record of this kind"
        }.`,
      );

    const named =
      place.part === ""
        ? ofObject.filter(({ position, part }) => position !== "" || part === "")
        : ofObject;
    if (named.length === 0)
      return refuse(
        "none",
        `names no part of ${place.object}; add a column "Part" with ${some(ofObject.map(({ part }) => part))}.`,
      );

    const atPosition = narrow(named, "position", place.position, position);
    if (!atPosition.ok) return atPosition;
    const atStage = narrow(atPosition.value, "stage", place.stage, (text) => {
      const stage = readStage(text);
      return stage
        ? answer(stage)
        : refuse(
            "wrong",
            `stage ${quoted(text)} is neither before nor after the withstand test; use "before" or "after".`,
          );
    });
    if (!atStage.ok) return atStage;

    const ofPart = place.part === "" ? atStage.value : ofThisPart(atStage.value, place.part);
    const [found, second] = ofPart;
    if (found === undefined)
      return lost(
        "part",
        place.part,
        atStage.value.map(({ part }) => part),
        `Unknown part ${quoted(place.part)} of ${place.object}; use one of ${some(atStage.value.map(({ part }) => part))}.`,
      );
    return second === undefined
      ? answer({ table: found.table, row: found.row })
      : refuse(
          "none",
          `fits ${ofPart.length} rows: ${some(ofPart.map(({ name }) => name))}; say which in a column "Part"${among.length > 1 ? ' or "Test"' : ""}.`,
        );
  };

  return (place, among) => {
    const found = whole(place, among);
    if (found.ok) return found;
    const rows = splitPlaces(place, (text) => byObject.has(objectKey(text))).flatMap((split) => {
      const one = whole(split, among);
      return one.ok ? [one] : [];
    });
    const [first, ...others] = rows;
    return first && others.every(({ value }) => isSameRow(value, first.value)) ? first : found;
  };
};

const isSameRow = (one: FoundRow<RecordRows>, other: FoundRow<RecordRows>) =>
  one.table === other.table && one.row === other.row;

const NAMES = { position: "combination, phase or pole", stage: "stage" } as const;
const TITLES = { position: "Combination", stage: "Stage" } as const;

/**
 * The candidates that agree in one key. Those whose kind knows no stage agree with every stage; a line
 * that names a position means a row that has one.
 */
const narrow = <T extends RecordRows>(
  rows: readonly Candidate<T>[],
  key: "position" | "stage",
  written: string,
  read: (text: string) => Result<string>,
): Answer<readonly Candidate<T>[]> | Lost => {
  const without = rows.filter((row) => row[key] === "");
  if (without.length === rows.length && (key === "stage" || written === "")) return answer(rows);
  const choices = some(rows.map((row) => row[key]));
  const object = rows[0]?.object;
  if (written === "")
    return without.length > 0
      ? answer(without)
      : refuse("none", `names no ${NAMES[key]}; add a column "${TITLES[key]}" with ${choices}.`);
  const verbatim =
    key === "position" ? rows.filter((row) => plainWords(row[key]) === plainWords(written)) : [];
  if (verbatim.length > 0) return answer(verbatim);
  const wanted = read(written);
  if (!wanted.ok)
    return key === "position"
      ? lost(
          key,
          written,
          rows.map((row) => row[key]),
          wanted.reason,
        )
      : wanted;
  const exact = rows.filter((row) => row[key] === wanted.value);
  // A withstand test puts a phase against earth, so that "L1-E" there is the phase L1.
  const toEarth = rows.filter(
    (row) => row.table.kind.id === "withstand" && `${row[key]}-E` === wanted.value,
  );
  const found = key === "stage" ? [...exact, ...without] : exact.length > 0 ? exact : toEarth;
  return found.length > 0
    ? answer(found)
    : lost(
        key,
        written,
        rows.map((row) => row[key]),
        choices === ""
          ? `${object} has no row by ${NAMES[key]} for such a reading.`
          : `Unknown ${NAMES[key]} ${quoted(written)} for ${object}; use one of ${choices}.`,
      );
};

const candidatesOf = <T extends RecordRows>(table: T): Candidate<T>[] => {
  const keys = keyIds(table.kind);
  const positionId = keys.find((id) => !["object", "part", "stage"].includes(id));
  const readKey = positionReader([]);
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

const PLACE = new RegExp(`^${anyWord(({ places }) => places)}$`);

/** A panel's or section's name without case, spaces and punctuation, and without words such as "panel" before it. */
const objectKey = (text: string): string => {
  const words = plainWords(text).split(" ");
  const from = words.findIndex((word) => !PLACE.test(word));
  return (from < 0 ? words : words.slice(from)).join("");
};

/** The rows of the part as it is written; those of a part that has these words among others only where there is none. */
const ofThisPart = <T extends RecordRows>(rows: readonly Candidate<T>[], written: string) => {
  const verbatim = rows.filter(({ part }) => plainWords(part) === plainWords(written));
  return verbatim.length > 0
    ? verbatim
    : rows.filter(({ part, object }) => isPart(written, part, object));
};

/** Every word of the part as written is in the part's name, or in that of the panel it belongs to. */
const isPart = (written: string, part: string, object: string): boolean => {
  const [words, own, panel] = [partWords(written), partWords(part), partWords(object)];
  return (
    words.some((word) => own.includes(word)) &&
    words.every((word) => own.includes(word) || panel.includes(word))
  );
};

/** Each part that the records name, and how it is written. */
const PART_WORDS = PARTS.map(
  (part) =>
    [
      new RegExp(
        wholeWord(({ parts }) => parts?.[part]),
        "gu",
      ),
      part,
    ] as const,
);

const partWords = (text: string): string[] =>
  PART_WORDS.reduce(
    (words, [pattern, part]) => words.replace(pattern, part),
    plainWords(text),
  ).split(" ");

/** Names once each, the middle left out where they are many. */
const some = (names: readonly string[]): string => {
  const once = [...new Set(names)].filter((name) => name !== "");
  return once.length <= 16
    ? once.join(", ")
    : `${once.slice(0, 8).join(", ")} … ${once.slice(-4).join(", ")}`;
};
