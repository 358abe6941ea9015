import { unitCalled } from "../../quantities/reading/readUnit";
import { type Unit, unitSize } from "../../quantities/units";
import { LEFT_OUT } from "./mappedTo";
import { plainWords } from "./plainWords";
import { areSchemeLetters, isOneOf, namesPosition, schemeAmong } from "./readPosition";
import { STAGE, WITHSTAND } from "./readStage";
import { readTitle, splitTitle, type Title } from "./readTitle";
import type { TitleWords } from "./synonyms";
import { titleKeys } from "./titleKeys";
import { withoutWave } from "./wave";

/** What a column's title says of every reading under it: its panel or section, its phase, pole or combination, its stage, the operation of a breaker. */
export interface Says {
  readonly object?: string;
  readonly part?: string;
  readonly subpart?: string;
  readonly position?: string;
  readonly stage?: string;
  readonly operation?: string;
}

/** Which cells of which column are another's: those beside a text, of the n-th line with the same names, or a part of each. */
export type CellsOf = { readonly column: number } & (
  | { readonly part: (text: string) => string }
  | { readonly beside: number; readonly is: (text: string) => boolean }
  | { readonly nth: number; readonly names: readonly number[] }
);

export interface ExportColumn {
  readonly index: number;
  readonly title: string;
  readonly unit?: Unit;
  /** What the column holds: a name of `FIELDS` or the id of a record column; none where it is not recognised. */
  readonly field?: string;
  /** Set for a column of a wide table, whose title says more than the field. */
  readonly says?: Says;
  /** Set where its cells are those of another column, on lines of which something tells that they are its. */
  readonly from?: CellsOf;
  /** Set where another column holds the same on lines on which this one is blank. */
  readonly byTurns?: true;
  /** Set where its name is written once and holds for the blank cells below it. */
  readonly below?: true;
  /** Set where its cells, and not its title, say that it is the instrument. */
  readonly listed?: true;
  /** Set where it holds nothing that a workbook has a place for: a running number, a limit, what the file works out itself. */
  readonly spare?: true;
  /** Title of the column before it that reads alike, for which it was left out. */
  readonly alike?: string;
}

/** How titles are to be read: the fields that the user has named, by what a title is called by (`titleKey`), and further words. */
export interface TitleReading {
  readonly given: ReadonlyMap<string, string>;
  readonly words?: TitleWords;
}

/** A field that the user names for a column, where one title stands for one phase: `resistance of L1-E`, `resistance of L1-E before`. */
const OF = /^(.*\S) of (\S.*)$/;
/** The times of a breaker's poles lie across a row, so that a phase is there the name of a column. */
const POLE_TIME = /^l[123]$/;

/**
 * The columns under one row of titles, or two of which the upper groups the lower.
 *
 * @param lines the rows of titles, and `units` the row of units under them, if there is one
 * @example titlesOf([["Panel", "R (µΩ)", ""], ["", "L1", "L2"]], [], { given: new Map() })[2] // field "resistance", says L2
 */
export const titlesOf = (
  lines: readonly (readonly string[])[],
  units: readonly string[],
  reading: TitleReading,
): ExportColumn[] => {
  const last = lines.at(-1) ?? [];
  const upper = joinedLines(lines.slice(0, -1));
  const digits = ["1", "2", "3"].every((pole) => last.includes(pole));
  const schemed = schemeAmong(last.map((title) => title.toUpperCase())) ?? "";
  const ends = schemeAmong(
    last.map((title) => (splitTitle(title).name.split(" ").at(-1) ?? "").toUpperCase()),
  );
  const measured = lettersWithUnit(last);
  const letters = (title: string) =>
    isOneOf(schemed, title.toUpperCase()) || (digits && /^[123]$/.test(title));
  let group = "";
  const parts = Array.from({ length: Math.max(last.length, upper.length) }, (_, index) => {
    const [over = "", under = ""] = [upper[index], last[index]];
    if (over !== "") group = over;
    const above = under === "" ? over : group;
    return { above, under, title: [above, under].filter((text) => text !== "").join(" ") };
  });
  const keys = titleKeys(parts.map(({ title }) => title));
  return parts.map(({ above, under, title }, index) => {
    const below = unitCalled(bracketless(units[index] ?? ""));
    return columnOf(index, title, above, under, below, {
      reading,
      keys: [...(keys[index] ?? []), plainWords(under)],
      letters,
      measured,
      isPhase: (text) => namesPosition(text) || isOneOf(ends ?? "", text.toUpperCase()),
    });
  });
};

/** The lines above the last as one. */
const joinedLines = (lines: readonly (readonly string[])[]): readonly string[] =>
  lines.length < 2
    ? (lines[0] ?? [])
    : Array.from({ length: Math.max(...lines.map((line) => line.length)) }, (_, at) =>
        lines.flatMap((line) => line[at] || []).join(" "),
      );

/** The three titles that are the letters of one scheme with the same unit. */
const lettersWithUnit = (titles: readonly string[]): ReadonlySet<string> => {
  const lettered = [...new Set(titles)].flatMap((title) => {
    const { name, unit } = splitTitle(title);
    return unit !== undefined && /^[A-Z]$/i.test(name) ? [{ title, name, unit }] : [];
  });
  const [first, ...others] = lettered;
  return lettered.length === 3 &&
    areSchemeLetters(lettered.map(({ name }) => name.toUpperCase())) &&
    others.every(({ unit }) => unit === first?.unit)
    ? new Set(lettered.map(({ title }) => title))
    : new Set();
};

interface How {
  readonly reading: TitleReading;
  /** What the user may call the column by, that first which counts first. */
  readonly keys: readonly string[];
  readonly letters: (title: string) => boolean;
  /** Titles that are a letter of a phase with a unit, the same for all three: `R (µΩ)`, `Y (µΩ)`, `B (µΩ)`. */
  readonly measured: ReadonlySet<string>;
  /** Whether a part of a title names a phase: one letter only where titles end with those of a scheme. */
  readonly isPhase: (text: string) => boolean;
}

const columnOf = (
  index: number,
  title: string,
  above: string,
  under: string,
  below: Unit | undefined,
  how: How,
): ExportColumn => {
  const { given } = how.reading;
  const key = given.size === 0 ? undefined : how.keys.find((name) => given.has(name));
  const mapped = key === undefined ? undefined : given.get(key);
  if (mapped !== undefined) return mappedColumn(index, title, [above, under], below, mapped, how);
  const { field, unit, says } = titleOver(title, above, under, how);
  const measure = (field === undefined && says === undefined ? undefined : unit) ?? below;
  return field !== undefined && isPhaseTitle(field, above, measure)
    ? {
        index,
        title,
        field: fieldAbove(above, under, how),
        unit: measure,
        says: { position: field.toUpperCase() },
      }
    : {
        index,
        title,
        field: field ?? (says ? "reading" : undefined),
        unit: measure,
        ...(says && { says }),
      };
};

/** A column that the user has named. */
const mappedColumn = (
  index: number,
  title: string,
  [above, under]: readonly [above: string, under: string],
  below: Unit | undefined,
  mapped: string,
  how: How,
): ExportColumn => {
  if (mapped === LEFT_OUT) return { index, title };
  const [, field = mapped, of = ""] = OF.exec(mapped) ?? [];
  const stage = STAGE.exec(of)?.[0];
  const position = of.replace(stage ?? "", "").trim();
  const says = { ...(position && { position }), ...(stage && { stage }) };
  const unit =
    readTitle(title, field).unit ??
    splitTitle(title).unit ??
    understood(under, how).unit ??
    understood(above, how).unit;
  return { index, title, field, unit: unit ?? below, ...(of && { says }) };
};

/** What a title says, and the one that groups it. */
const titleOver = (title: string, above: string, under: string, how: How): Understood => {
  if (above === "" || under === "") return understood(title, how);
  const whole = readTitle(title, undefined, how.reading.words);
  return whole.field === undefined
    ? together(understood(above, how), understood(under, how))
    : whole;
};

/** A phase as the name of a column is a pole's time, or else where something was measured. */
const isPhaseTitle = (field: string, above: string, unit: Unit | undefined): boolean =>
  POLE_TIME.test(field) &&
  (above !== "" || unit !== undefined) &&
  !(unit && unitSize(unit).quantity === "time");

const fieldAbove = (above: string, under: string, how: How): string =>
  under === "" ? "reading" : (understood(above, how).field ?? "reading");

interface Understood {
  readonly field?: string;
  readonly unit?: Unit;
  readonly says?: Says;
}

const together = (above: Understood, under: Understood): Understood => {
  const says = { ...above.says, ...under.says };
  return {
    field: under.field ?? above.field,
    unit: under.unit ?? above.unit,
    ...(Object.keys(says).length > 0 && { says }),
  };
};

/** What one title says: a field with its unit, and besides, where it has them, a phase and a stage. */
const understood = (text: string, how: How): Understood => {
  const { words } = how.reading;
  if (how.letters(text)) return { says: { position: text } };
  if (how.measured.has(text)) {
    const { name, unit } = splitTitle(text);
    return { unit, says: { position: name } };
  }
  const plain = readTitle(text, undefined, words);
  if (plain.field !== undefined) return plain;
  const { name, unit } = splitTitle(text);
  const { stage, rest } = withoutStage(name);
  const staged = stage === undefined ? {} : { stage };
  if (rest === "") return stage === undefined ? { unit } : { unit, says: staged };
  if (namesPosition(rest)) return { unit, says: { ...staged, position: rest } };
  const field = readTitle(rest, undefined, words).field;
  if (field !== undefined && stage !== undefined) return { field, unit, says: staged };
  const parted = fieldWithPhase(rest, how);
  return parted
    ? {
        field: parted.field,
        unit: unit ?? parted.unit,
        says: { ...staged, position: parted.position },
      }
    : { unit };
};

/** A text that names a phase before or after what is measured of it. */
const fieldWithPhase = (text: string, { isPhase, reading }: How) => {
  for (const [position, measured] of partings(text)) {
    const title = isPhase(position) ? measuredField(measured, reading.words) : undefined;
    if (title) return { ...title, position };
  }
  return undefined;
};

/** A name without the stage that it names, and without the withstand test that this is before or after. */
const withoutStage = (name: string): { readonly stage?: string; readonly rest: string } => {
  const stage = STAGE.exec(name)?.[0];
  const tidied = (text: string) => text.replace(/\s+/g, " ").replace(/^[\s–-]+|[\s–-]+$/g, "");
  return stage === undefined
    ? { rest: tidied(name) }
    : { stage, rest: tidied(tidied(name.replace(STAGE, " ")).replace(WITHSTAND, " ")) };
};

/** Each way to part a text into what may name a phase and what is measured of it. */
const partings = (text: string): (readonly [position: string, measured: string])[] => {
  const words = text.split(" ");
  return words.slice(1).flatMap((_, before) => {
    const [head, tail] = [words.slice(0, before + 1).join(" "), words.slice(before + 1).join(" ")];
    return [
      [tail, head],
      [head, tail],
    ] as const;
  });
};

const measuredField = (text: string, words: TitleWords | undefined): Title | undefined => {
  const whole = readTitle(text, undefined, words);
  const { name, unit } = splitTitle(text);
  const field = whole.field ?? readTitle(name, undefined, words).field;
  return field === undefined ? undefined : { field, unit: whole.unit ?? unit };
};

export const bracketless = (text: string) => text.replace(/^[([]|[)\]]$/g, "");

/** A row under the titles in which every filled cell is a unit. */
export const isUnitRow = (cells: readonly string[]): boolean => {
  const filled = cells.filter((cell) => cell !== "" && cell !== "-");
  return (
    filled.length > 0 &&
    filled.every(
      (cell) => cell.length < 12 && unitCalled(withoutWave(bracketless(cell))) !== undefined,
    )
  );
};
