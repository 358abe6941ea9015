import type { DecimalMark } from "../../quantities/reading/readNumber";
import type { HeadingUnit } from "../columns/headingUnit";
import type { Constants } from "../constants";
import type { Decoded } from "../text/decode";
import type { Knowledge } from "../understand/knowledge";
import { mappedTo } from "../words/mappedTo";
import type { DateOrder } from "../words/readDate";
import { sensedWords } from "../words/sensedWords";
import { type Synonyms, titleWords } from "../words/synonyms";
import { titleKey } from "../words/titleKeys";
import type { LayoutOptions } from "./head";

/** Whether each line has one reading, or one for each phase. */
export type Shape = "long" | "wide";

/**
 * What a guess goes by that is looked through before it counts: of two columns that read alike the later
 * is left out, a column of nothing but instruments is the instrument, and names that are written once
 * hold for the blank cells below them.
 */
export interface Guess {
  /** Ids and serial numbers of the lineup's instruments, in lower case. */
  readonly instruments: ReadonlySet<string>;
  /** Lines of the titles of blocks in which no name holds for the cells below it. */
  readonly apart: ReadonlySet<number>;
}

/** What the user can say about a file; whatever is not said is found by inspection. */
export interface ExportOptions {
  /** Name of the file, as it shall stand in the origin column. */
  readonly name: string;
  /** Fields by title, for titles that are not recognised or mean something else here. */
  readonly mapping?: Readonly<Record<string, string>>;
  /** The decimal mark, where the user has settled it. */
  readonly decimal?: DecimalMark;
  readonly dateOrder?: DateOrder;
  readonly delimiter?: string;
  /** Line of the titles of the first table. */
  readonly titles?: number;
  readonly titleLines?: 1 | 2 | 3;
  /** Whether a row of units stands under them. */
  readonly units?: boolean;
  /** Whether phases lie across the columns. */
  readonly shape?: Shape;
  /** Lines to be taken for readings that would be skipped. */
  readonly keep?: readonly number[];
  readonly synonyms?: Synonyms;
  /** The unit of readings whose titles and cells tell none, as a heading would say it. */
  readonly heading?: HeadingUnit;
  /** Whether phases of a wide table without a reading are rows too. */
  readonly blanks?: boolean;
  /** Titles of columns whose name is written once and holds for the blank cells below it. */
  readonly down?: readonly string[];
  /** For a guess that somebody looks through. */
  readonly guess?: Guess;
  /** What the workbook tells that the export is for, by which its columns are understood. */
  readonly knows?: Knowledge;
  /** What holds for every line that does not say it itself. */
  readonly constants?: Constants;
  /** How the bytes were read, for the inspection. */
  readonly encoding?: Decoded["encoding"];
}

/** The options as far as they say where titles stand and what they mean. */
export const layoutOptions = ({
  mapping = {},
  synonyms,
  keep,
  titles,
  titleLines,
  units,
  knows,
}: ExportOptions): LayoutOptions => ({
  given: new Map(
    Object.entries(mapping).map(([title, field]) => [titleKey(title), mappedTo(field) ?? field]),
  ),
  words: knows ? sensedWords(titleWords(synonyms)) : titleWords(synonyms),
  objectOf: knows?.objectOf,
  isPart: knows?.isPart,
  titles,
  titleLines,
  units,
  keep: keep && new Set(keep),
});
