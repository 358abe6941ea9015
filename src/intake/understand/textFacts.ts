import { readUnit } from "../../quantities/reading/readUnit";
import type { Unit } from "../../quantities/units";
import { wholeWord } from "../words/phrases";
import { readDate } from "../words/readDate";
import { sensesOf } from "../words/senses";
import { withoutWave } from "../words/wave";

/** What a text over a table says in free words, each as it is written. */
export interface TextFacts {
  readonly dates: readonly string[];
  /** Who tested: those that a word such as "by" names before a name alone. */
  readonly people: readonly string[];
  readonly instruments: readonly string[];
  /** Values with their units, each with the words that it stands beside; blank where it stands alone. */
  readonly measures: readonly TextMeasure[];
}

export interface TextMeasure {
  readonly about: string;
  readonly text: string;
  readonly unit: Unit;
}

type Sort = "instrument" | "date" | "person" | "measure";

/** Something found in a text, and where. */
interface Mark {
  readonly sort: Sort;
  readonly from: number;
  readonly to: number;
  readonly text: string;
  readonly unit?: Unit;
  readonly about?: string;
}

/** A mark with the words before it, or those after it where none stands before. */
interface Placed extends Mark {
  readonly before: string;
  readonly after: string;
}

/** No line over a table is longer. */
const LONGEST = 300;
const APART = /[,;|()[\]]|\s{2,}|\t|\s[-–—/·•]\s/gu;
const DATES =
  /(?<![\p{L}\p{N}.,/-])(?:\d{4}[-/.]\d{1,2}[-/.]\d{1,2}|\d{1,2}([./-])\d{1,2}\1(?:\d{4}|\d\d)|\d{1,2}(?:\.|\p{Ll}{1,3})?[ -]+(?:de |of )?\p{L}{3,10}[ .,-]+(?:de |del )?\d{4}|\p{L}{3,10}\.? \d{1,2}(?:\p{Ll}{2})?,? \d{4})(?:[ T]\d{1,2}:\d\d(?::\d\d)?)?(?![\p{L}\p{N}]|[./-]\d)/gu;
const PARTICLES = "(?:(?:van|von|de|da|dos|do|der|den|del|el|al|la|le|zu) ){0,2}";
const PEOPLE = new RegExp(
  `(?<![\\p{L}\\p{N}.])(?:(?:\\p{Lu}\\.[ -]?){1,3}${PARTICLES}\\p{Lu}[\\p{L}'’-]+|\\p{Lo}\\. ?\\p{Lo}{2,})(?![\\p{L}\\p{N}])`,
  "gu",
);
const MEASURES =
  /(?<![\p{L}\p{N}.,][-–−]?)([-−]?\d{1,3}(?: \d{3})+|[-−]?\d+(?:[.,]\d+)?)\s*(°\s?[CF]|%\s?[\p{L}.]{0,4}|[\p{L}µμΩΩ]{1,10})(?![\p{L}\p{N}])/gu;
const PERSON = new RegExp(`^${PEOPLE.source}$`, "u");
/** Whether a text is a name as those are written who sign a record: `M. Oakes`, `J. de la Cruz`. */
export const isPerson = (text: string): boolean => text.length < 40 && PERSON.test(text.trim());
const BY = new RegExp(`${wholeWord(({ by }) => by)}\\s*$`, "iu");
/** What is read beside a test is read with another instrument than the test (roots that the languages share). */
const BESIDE = /therm|hygro|barom|termo|higro|ترمومتر|حرارة|رطوبة/iu;

/**
 * What a line over a table says in free words: dates wherever they stand, instruments that the lineup
 * lists, names of people, values with their units and the words beside them. What stands among words
 * that nobody knows is left.
 *
 * @param instruments ids and serial numbers in lower case
 * @example textFacts("12 June 2026, by G. Ruiz, copper at 79 °F", new Set()).people // ["G. Ruiz"]
 */
export const textFacts = (text: string, instruments: Iterable<string>): TextFacts => {
  const placed = placedIn(text.slice(0, LONGEST), instruments);
  const of = (sort: Sort) => placed.filter((mark) => mark.sort === sort);
  const texts = (marks: readonly Placed[]) => [...new Set(marks.map((mark) => mark.text))];
  const people = of("person").filter(isTester);
  const named = people.filter(({ before }) => before !== "");
  return {
    dates: texts(of("date").filter(isOfTest)),
    people: texts(named.length > 0 ? named : people),
    instruments: texts(of("instrument").filter(({ before }) => !BESIDE.test(before))),
    measures: of("measure").flatMap(({ text: written, unit, about, before, after }) =>
      unit === undefined ? [] : [{ about: about ?? (before || after), text: written, unit }],
    ),
  };
};

/** Whether the instrument that a key names is not the one of the test, such as a thermometer. */
export const isBesideTest = (key: string): boolean => BESIDE.test(key);

/** A day is the test's where nothing but known words stand beside it. */
const isOfTest = ({ before, after }: Placed): boolean => {
  const { senses, unknown } = sensesOf(`${before} ${after}`);
  return unknown === 0 && !senses.has("witness") && !senses.has("serial");
};

const isTester = ({ before, after }: Placed): boolean => {
  if (BY.test(before)) return true;
  const { words, senses } = sensesOf(before);
  const isKeyed = words.at(-1)?.senses.includes("by") ?? false;
  return (isKeyed && !senses.has("witness")) || (before === "" && after === "");
};

const placedIn = (text: string, instruments: Iterable<string>): Placed[] => {
  const marks = marksIn(text, instruments);
  const gaps = [...text.matchAll(APART)].map(({ index, 0: { length } }) => ({
    from: index,
    to: index + length,
  }));
  return marks.map((mark, at): Placed => {
    const outer = gaps.filter(
      ({ from, to }) => !marks.some((one) => from < one.to && to > one.from),
    );
    const left = Math.max(
      marks[at - 1]?.to ?? 0,
      ...outer.filter(({ to }) => to <= mark.from).map(({ to }) => to),
    );
    const gap = outer.find(({ from }) => from >= mark.to)?.from ?? text.length;
    const next = marks[at + 1]?.from ?? text.length + 1;
    const before = text.slice(left, mark.from).trim();
    // Words between two marks are the next one's.
    const after = gap < next ? text.slice(mark.to, gap).trim() : "";
    return { ...mark, before: bare(before), after: bare(after) };
  });
};

const bare = (text: string) => text.replace(/^[\s:.–—-]+|[\s:–—-]+$/g, "");

const marksIn = (text: string, instruments: Iterable<string>): Mark[] => {
  const marks: Mark[] = [];
  const add = (found: readonly Mark[]) => {
    for (const one of found)
      if (!marks.some(({ from, to }) => one.from < to && one.to > from)) marks.push(one);
  };
  add(instrumentsIn(text, instruments));
  add(foundBy(DATES, text, "date").filter((mark) => isDay(mark.text)));
  add(foundBy(PEOPLE, text, "person"));
  add(measuresOf(text));
  return marks.sort((one, other) => one.from - other.from);
};

const foundBy = (pattern: RegExp, text: string, sort: Sort): Mark[] =>
  [...text.matchAll(pattern)].map(({ index, 0: whole }) => ({
    ...{ sort, from: index, to: index + whole.length, text: whole },
  }));

const isDay = (text: string) => readDate(text, "day-first").ok || readDate(text, "month-first").ok;

const WORD = /[\p{L}\p{N}]/u;
const instrumentsIn = (text: string, instruments: Iterable<string>): Mark[] => {
  const lower = text.toLowerCase();
  return [...instruments].flatMap((id): Mark[] => {
    const from = id.length < 2 ? -1 : lower.indexOf(id);
    const to = from + id.length;
    const isWhole =
      from >= 0 && !WORD.test(lower[from - 1] ?? "") && !/[\p{L}\p{N}-]/u.test(lower[to] ?? "");
    return isWhole ? [{ sort: "instrument", from, to, text: text.slice(from, to) }] : [];
  });
};

const measuresOf = (text: string): Mark[] =>
  [...text.matchAll(MEASURES)].flatMap(({ index, 0: whole, 1: number = "", 2: written = "" }) => {
    const isShare = written.startsWith("%");
    const read = isShare
      ? { ok: true as const, value: "%" as Unit }
      : readUnit(withoutWave(written));
    const sign = isShare ? written.slice(1).trim() : "";
    const value = number.replace(/ /g, "").replace("−", "-");
    return read.ok
      ? [
          {
            sort: "measure" as const,
            ...{ from: index, to: index + whole.length, text: `${value} ${read.value}` },
            unit: read.value,
            ...(sign !== "" && { about: sign }),
          },
        ]
      : [];
  });
