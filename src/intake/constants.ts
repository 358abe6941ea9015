import type { Said } from "../messages/reasons";
import { storedWords, type Told } from "../messages/told";
import { serialDay } from "../quantities/dates";
import { groupedBy } from "../quantities/groupedBy";
import { quoted } from "../quantities/quoted";
import { readReading } from "../quantities/reading/readReading";
import { answer, type Result, refuse } from "../quantities/result";
import { storedKindWords } from "../records/kindWords";
import type { RecordBook } from "../sheets/recordBook";
import { someNames } from "./rows/lost";
import type { Written } from "./table/written";
import { type KnownKind, knowledgeOf } from "./understand/knowledge";
import { placesNamed } from "./understand/places";
import { fieldName, isMeasured } from "./words/fieldNames";
import { fieldMeant } from "./words/fields";
import { kindOfTest } from "./words/kindOfTest";
import { plainWords } from "./words/plainWords";
import { readDate } from "./words/readDate";
import { readPositions } from "./words/readPosition";
import { readStage } from "./words/readStage";

/** What holds for every line of an export that does not say it itself. */
export interface Constants {
  /** Id of the record kind that all of it is of. */
  readonly kind?: string;
  readonly facts: readonly Written[];
}

export const NO_CONSTANTS: Constants = { facts: [] };

/** What is said for the lines of a file, by the name of its field. */
export type SaidConstants = Readonly<Record<string, string>>;

/** Fields that are a line's own. */
const OF_A_LINE: readonly string[] = ["reading", "resistance", "r30s", "r10min", "unit", "time"];

const SETTABLE = [
  ...["test", "panel", "part", "position", "stage", "date", "by", "instrument"],
  ...["temperature", "air", "humidity", "pressure"],
];

/**
 * Reads what somebody says of all lines of an export: `{ stage: "before", part: "Breaker" }`.
 *
 * @returns `wrong` for a field that is not known or is a line's own, `none` for a name that the workbook
 *   does not have; the reason says which are right
 */
export function readConstants(said: SaidConstants, book: RecordBook): Result<Constants, Told> {
  const { kinds } = knowledgeOf(book.tables, { panels: book.lineup?.panels });
  let found: Constants = NO_CONSTANTS;
  for (const [word, text] of Object.entries(said)) {
    const field = fieldMeant(word.trim());
    const value = text.trim();
    if (field === undefined || OF_A_LINE.includes(field) || value === "")
      return refuse("wrong", whyNot(word, field, value));
    const read = constantOf(field, value, kinds);
    if (!read.ok)
      return refuse(read.kind, (words) => words.intake.constants.of(word, read.say(words)));
    const { kind = found.kind, facts } = read.value;
    found = { ...(kind === undefined ? {} : { kind }), facts: [...found.facts, ...facts] };
  }
  return answer(found);
}

/** Names once each, those that most records have first. */
const oftenest = (names: readonly string[]): string => {
  const times = groupedBy(names, (name) => name);
  return someNames(
    [...times].sort(([, one], [, other]) => other.length - one.length).map(([name]) => name),
  );
};

const whyNot =
  (word: string, field: string | undefined, value: string): Said<Told> =>
  (told) => {
    const { constants } = told.intake;
    if (field === undefined) return constants.unknown(quoted(word), SETTABLE);
    return value === "" ? constants.blank(word) : constants.ofALine(word, fieldName(field, told));
  };

/** What one field says. */
function constantOf(
  field: string,
  text: string,
  kinds: readonly KnownKind[],
): Result<Constants, Told> {
  const fact = (value = text): Result<Constants, Told> =>
    answer({ facts: [{ field, title: fieldName(field, storedWords()), text: value }] });
  switch (field) {
    case "test":
      return kindSaid(text, kinds);
    case "stage": {
      const stage = readStage(text);
      return stage
        ? fact(stage)
        : refuse("wrong", ({ intake }) => intake.constants.noStage(quoted(text)));
    }
    case "object":
    case "part": {
      const isKnown = kinds.some(({ places }) => placesNamed(places, text).length > 0);
      const names = kinds.flatMap(({ places }) =>
        places.map((place) => (field === "object" ? place.object : place.part)),
      );
      return isKnown
        ? fact()
        : refuse("none", ({ intake }) =>
            intake.constants.noRecordOf(quoted(text), oftenest(names)),
          );
    }
    case "position": {
      const names = kinds.flatMap(({ positions, points }) => [...positions, ...points]);
      const [read = text] = readPositions([text]);
      return names.some((name) => plainWords(name) === plainWords(read) || name === read)
        ? fact()
        : refuse("none", ({ intake }) =>
            intake.constants.noRecordOf(quoted(text), oftenest(names)),
          );
    }
    case "date": {
      const day = readDate(text, undefined);
      return day.ok ? fact(serialDay(day.value)) : day;
    }
    default:
      return measured(field, text) ?? fact();
  }
}

/** The record kind that a name of a test means, by its id, its title or its sheet as well. */
function kindSaid(text: string, known: readonly KnownKind[]): Result<Constants, Told> {
  const kinds = known.map(({ kind }) => kind);
  const words = plainWords(text);
  const kind =
    kinds.find(({ id, sheet }) =>
      [id, storedKindWords(id).title, sheet].some((name) => plainWords(name) === words),
    ) ?? kindOfTest(text, kinds);
  return kind
    ? answer({ kind: kind.id, facts: [] })
    : refuse("none", ({ intake }) =>
        intake.constants.noKind(
          quoted(text),
          kinds.map(({ sheet }) => sheet),
        ),
      );
}

const UNITS = { temperature: "°C", air: "°C", humidity: "%", pressure: "kPa" } as const;

/** Why a quantity cannot be read; undefined where it can, or is none. */
function measured(field: string, text: string): Result<Constants, Told> | undefined {
  const unit = Object.hasOwn(UNITS, field) ? UNITS[field as keyof typeof UNITS] : undefined;
  if (unit !== undefined) {
    const read = readReading(text, { unit });
    return read.ok ? undefined : read;
  }
  return isMeasured(field) && !/\d/.test(text)
    ? refuse("wrong", ({ intake }) => intake.constants.noQuantity(quoted(text)))
    : undefined;
}
