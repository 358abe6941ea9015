import type { Told } from "../../messages/told";
import { memoizeFor } from "../../quantities/memoizeFor";
import { quoted } from "../../quantities/quoted";
import { type Answer, answer, type Result, refuse } from "../../quantities/result";
import { deviceKeys, type KnownPanel } from "../understand/devices";
import { acrossOpen, ofSpoken } from "../understand/partsSpoken";
import { type NamedPlace, placesNamed, placesOf } from "../understand/places";
import { positionReader } from "../words/readPosition";
import { readStage } from "../words/readStage";
import {
  type Candidate,
  candidatesOf,
  type FoundRow,
  isSameSort,
  objectKey,
  positionsOf,
} from "./candidates";
import { type Lost, lost, someNames } from "./lost";
import { narrow } from "./narrow";
import { ofThisPart } from "./ofPart";
import type { RecordRows } from "./recordRows";
import { type Place, splitPlaces } from "./splitPlaces";

export type RowSearch<T extends RecordRows> = Answer<FoundRow<T>> | Lost;

/**
 * Makes the search for the one row that a line belongs to, by panel or section, then combination or
 * pole, then stage, then part. A line that fits no row, or several, is refused with what would be right.
 *
 * A panel and its part in one cell are parted where that gives one row and no other.
 *
 * @param tables the record tables
 * @param positions every position that the export writes, by which its phase letters are known
 * @param panels of the lineup, which may be called by what stands in them
 */
export const rowFinder = <T extends RecordRows>(
  tables: readonly T[],
  positions: Iterable<string>,
  panels: readonly KnownPanel[] = [],
): ((place: Place, among: readonly T[]) => RowSearch<T>) => {
  const readAny = readerOf([...positions], tables);
  const byObject = new Map<string, Candidate<T>[]>();
  for (const candidate of tables.flatMap(candidatesOf)) {
    const key = objectKey(candidate.object);
    const known = byObject.get(key);
    if (known) known.push(candidate);
    else byObject.set(key, [candidate]);
  }
  const unknownObject = unknownObjectIn(tables);
  const byNames = namesFinder(byObject, readAny, deviceKeys(panels));
  const whole = (place: Place, among: readonly T[]): RowSearch<T> => {
    const ofObject = candidatesFor(place.object, byObject, among);
    if (!ofObject.ok) return ofObject;
    return ofObject.value.length === 0
      ? unknownObject(place.object, among)
      : rowAmong(ofObject.value, place, readAny, among.length > 1);
  };

  return (place, among) => {
    const found = whole(place, among);
    if (found.ok) return found;
    const rows = splitPlaces(place, (text) => byObject.has(objectKey(text))).flatMap((split) => {
      const one = whole(split, among);
      return one.ok ? [one] : [];
    });
    const [first, ...others] = rows;
    if (first && others.every(({ value }) => isSameRow(value, first.value))) return first;
    const named = byNames(place, among);
    return named?.ok ? named : found;
  };
};

/**
 * Makes the search by all that a line calls its panel and part, whichever words of it stand where, in any
 * of the languages: where these name one part of one panel, it is that.
 */
const namesFinder = <T extends RecordRows>(
  byObject: ReadonlyMap<string, readonly Candidate<T>[]>,
  readAny: (text: string) => Result<string, Told>,
  devices: ReadonlyMap<string, string>,
) => {
  const placesAmong = memoizeFor((among: readonly T[]) => placesOf(among, devices));
  return ({ object, part, ...told }: Place, among: readonly T[]) => {
    const names = [object, part].filter((name) => name !== "");
    let places: readonly NamedPlace[] = placesAmong(among);
    for (const name of names) places = placesNamed(places, name);
    const [only] = places;
    if (
      names.length === 0 ||
      only === undefined ||
      places.some((one) => one.object !== only.object)
    )
      return undefined;
    const parts = new Set(places.map((one) => one.part));
    const rows = (byObject.get(objectKey(only.object)) ?? []).filter(
      (row) => among.includes(row.table) && row.object === only.object && parts.has(row.part),
    );
    const known = parts.size === 1 ? only.part : "";
    return rows.length === 0
      ? undefined
      : rowAmong(rows, { ...told, object: only.object, part: known }, readAny, false);
  };
};

/** Reads positions by the export's own letters, and where these leave a doubt by those of the lineup. */
const readerOf = (positions: readonly string[], tables: readonly RecordRows[]) => {
  const byExport = positionReader(positions);
  const byLineup = positionReader([...positions, ...tables.flatMap(positionsOf)]);
  return (text: string): Result<string, Told> => {
    const found = byExport(text);
    if (found.ok) return found;
    const other = byLineup(text);
    return other.ok ? other : found;
  };
};

/** The rows of a panel or section, as far as its name tells it from others. */
const candidatesFor = <T extends RecordRows>(
  object: string,
  byObject: ReadonlyMap<string, readonly Candidate<T>[]>,
  among: readonly T[],
): Answer<readonly Candidate<T>[]> | Lost => {
  if (object === "") return refuse("none", ({ intake }) => intake.rows.noObject);
  const alike = (byObject.get(objectKey(object)) ?? []).filter(
    ({ table, object: own }) => among.includes(table) && isSameSort(object, own),
  );
  const verbatim = alike.filter((candidate) => candidate.object === object);
  const ofObject = verbatim.length > 0 ? verbatim : alike;
  const names = ofObject.map((candidate) => candidate.object);
  return names.every((name) => name === names[0])
    ? answer(ofObject)
    : lost("object", object, names, ({ intake }) =>
        intake.rows.openObject(quoted(object), someNames(names)),
      );
};

const MAX_ASKED = 200;

/**
 * Makes the refusal of panels and sections that have no row. The nearest of many names takes a while to
 * find; after so many unknown names none is looked for.
 */
const unknownObjectIn = <T extends RecordRows>(tables: readonly T[]) => {
  let left = MAX_ASKED;
  const objectsOf = ({ rows }: T) => rows.map((row) => String(row.object ?? "").trim());
  const objects = new Map(tables.map((table) => [table, someNames(objectsOf(table))]));
  const known = new Map<readonly T[], readonly string[]>();
  const namesAmong = (among: readonly T[]): readonly string[] => {
    left -= 1;
    if (left < 0) return [];
    const names = known.get(among) ?? [...new Set(among.flatMap(objectsOf))];
    known.set(among, names);
    return names;
  };
  return (object: string, among: readonly T[]): Lost =>
    lost("object", object, namesAmong(among), ({ intake }) =>
      intake.rows.noRow(
        quoted(object),
        among.flatMap((table): [string, string][] => {
          const known = objects.get(table);
          return known ? [[table.kind.sheet, known]] : [];
        }),
      ),
    );
};

/** The one row of a panel or section that a line belongs to, by position, stage and part. */
const rowAmong = <T extends RecordRows>(
  ofObject: readonly Candidate<T>[],
  place: Place,
  readAny: (text: string) => Result<string, Told>,
  isOneOfKinds: boolean,
): RowSearch<T> => {
  const parts = (rows: readonly Candidate<T>[]) => rows.map(({ part }) => part);
  const named =
    place.part === ""
      ? ofObject.filter(({ position, part }) => position !== "" || part === "")
      : ofObject;
  if (named.length === 0)
    return refuse("none", ({ intake }) =>
      intake.rows.noPart(place.object, someNames(parts(ofObject))),
    );
  const across = acrossOpen(place.position, place.about);
  const hasOpen = across !== place.position && named.some(({ position }) => isOpen(position));
  const written = hasOpen && readAny(across).ok ? across : place.position;
  const atPosition = narrow(named, "position", written, readAny);
  if (!atPosition.ok) return atPosition;
  const atStage = narrow(atPosition.value, "stage", place.stage, stageOf);
  if (!atStage.ok) return atStage;
  const ofPart = ofSpoken(
    place.part === "" ? atStage.value : ofThisPart(atStage.value, place.part),
    place.about,
  );
  const [first, second] = ofPart;
  if (first === undefined)
    return lost("part", place.part, parts(atStage.value), ({ intake }) =>
      intake.rows.unknownPart(quoted(place.part), place.object, someNames(parts(atStage.value))),
    );
  return second === undefined
    ? answer({ table: first.table, row: first.row })
    : refuse("none", ({ intake }) =>
        intake.rows.several(ofPart.length, someNames(ofPart.map(({ name }) => name)), isOneOfKinds),
      );
};

const isOpen = (position: string) => position.endsWith(" open");

const stageOf = (text: string): Result<string, Told> => {
  const stage = readStage(text);
  return stage ? answer(stage) : refuse("wrong", ({ intake }) => intake.rows.noStage(quoted(text)));
};

const isSameRow = (one: FoundRow<RecordRows>, other: FoundRow<RecordRows>) =>
  one.table === other.table && one.row === other.row;
