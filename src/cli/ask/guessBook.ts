import type { GuessedMap } from "../../intake/ownLayout/guessedMap";
import { guessMaps, titlesOn } from "../../intake/ownLayout/guessMaps";
import { mappable, mappedTo } from "../../intake/words/mappedTo";
import { titleKey, titleKeys } from "../../intake/words/titleKeys";
import type { CommandLineText } from "../../messages/commandLine";
import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { writeMapFile } from "../../sheets/kept/layoutMap";
import { lineupOfSheets } from "../../sheets/ours/lineupOfSheets";
import { UsageError, writeWhole } from "../files/files";
import { openBookAs } from "../openBookAs";
import { readColumns, readMeans, withWords } from "./meanings";

/** The maps, and for each block that is left out its first line and why. */
interface Guessed {
  readonly guessed: readonly GuessedMap[];
  readonly unread: readonly Said<Told>[];
}

export interface MapOptions {
  /** A lineup file, for a workbook that does not tell its lineup. */
  readonly lineup?: string;
  /** What columns and names mean, as `readColumns` and `readMeans` take it; the rest is guessed. */
  readonly columns?: string;
  readonly means?: string;
  /** A file of titles in the user's own words. */
  readonly synonyms?: string;
}

/** Guesses how a workbook in somebody's own layout is read as records, and writes the map file. */
export async function guessBook(
  book: string,
  out: string,
  { lineup, ...said }: MapOptions,
): Promise<Guessed> {
  const columns = said.columns === undefined ? {} : readColumns(said.columns);
  const means = said.means === undefined ? undefined : readMeans(said.means);
  const unknown = Object.values(columns).find((field) => mappedTo(field) === undefined);
  if (unknown !== undefined)
    throw new UsageError(({ map, told }) => map.unknownField(quoted(unknown), mappable(told)));
  const { snapshot } = await openBookAs(book, { lineup });
  const known = snapshot.lineup ?? lineupOfSheets(snapshot);
  if (!known) throw new UsageError(({ map }) => map.noLineup(book));
  const unread: Said<Told>[] = [];
  const worded = { ...snapshot, words: withWords(snapshot.words, said.synonyms) };
  if (said.columns !== undefined) refuseUnknown(book, columns, titlesOn(worded, columns));
  const guessed = guessMaps(
    worded,
    known,
    (sheet, line, reason) => unread.push((told) => `${sheet} row ${line}: ${reason(told)}`),
    { columns, means },
  );
  if (guessed.length === 0)
    throw new UsageError(({ map, told }) =>
      [map.noBlock(book), ...unread.map((one) => one(told))].join("\n  "),
    );
  writeWhole(out, writeMapFile(guessed.map(({ map }) => map)));
  return { guessed, unread };
}

/** Refuses titles that no block has, and names those that there are. */
function refuseUnknown(
  book: string,
  columns: Readonly<Record<string, string>>,
  blocks: readonly (readonly string[])[],
): void {
  const keys = new Set(blocks.flatMap((titles) => titleKeys(titles).flat()));
  const missed = Object.keys(columns).filter((title) => !isTitle(titleKey(title), keys));
  if (missed.length === 0) return;
  const there = [...new Set(blocks.flat())].filter((title) => title !== "");
  const named = there.slice(0, TITLES_NAMED).map((title) => quoted(title, 40));
  const titles = missed.map((title) => quoted(title)).join(", ");
  throw new UsageError(({ map }) => map.noTitle(book, titles, named, there.length - named.length));
}

const TITLES_NAMED = 30;

/** Of a title over two lines, the lower may be said alone. */
const isTitle = (key: string, keys: ReadonlySet<string>): boolean =>
  keys.has(key) || [...keys].some((one) => one.endsWith(` ${key}`));

/** What was guessed, in lines for people. */
export const guessedWords = (
  { guessed, unread }: Guessed,
  out: string,
  { map, told }: CommandLineText,
): string =>
  [
    ...guessed.flatMap(({ map: of, confidence, evidence, block }) => [
      map.block(of.sheet, of.titles, of.kind, confidence, evidence(told)),
      ...(of.unit === undefined ? [] : [map.unit(of.unit, quoted(block.title ?? ""))]),
      ...block.columns
        .filter(({ title }) => title !== "")
        .map(
          ({ name, field }) =>
            `  "${name}": ${told.intake.seen.howSure(field.evidence(told), field.confidence)}`,
        ),
    ]),
    ...unread.map((one) => map.leftOut(one(told))),
    map.wrote(out),
  ].join("\n");
