import { plainWords } from "../intake/fields";
import { type GuessedMap, guessMaps } from "../intake/guessMaps";
import { fieldNames, isMappedTo } from "../intake/readExport";
import { quoted } from "../quantities/quoted";
import { lineupOfSheets } from "../sheets/lineupOfSheets";
import { writeMapFile } from "../sheets/tableMap";
import { UsageError, writeWhole } from "./files";
import { readColumns, readMeans, withWords } from "./meanings";
import { openBookAs } from "./openBookAs";

/** The maps, and for each block that is left out its first line and why. */
interface Guessed {
  readonly guessed: readonly GuessedMap[];
  readonly unread: readonly string[];
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
  const unknown = Object.values(columns).find((field) => !isMappedTo(field));
  if (unknown !== undefined)
    throw new UsageError(`${quoted(unknown)} is no field to map a title to; ${fieldNames()}`);
  const { snapshot } = await openBookAs(book, { lineup });
  const known = snapshot.lineup ?? lineupOfSheets(snapshot);
  if (!known)
    throw new UsageError(`${book}: does not tell its lineup; give it with --lineup LINEUP.json`);
  const unread: string[] = [];
  const guessed = guessMaps(
    { ...snapshot, words: withWords(snapshot.words, said.synonyms) },
    known,
    (sheet, line, reason) => unread.push(`${sheet} row ${line}: ${reason}`),
    { columns, means },
  );
  if (guessed.length === 0)
    throw new UsageError(
      [
        `${book}: has no block with titles whose lines find a row of the lineup; change its titles or words, or write a map by hand (see "gearproof map --help")`,
        ...unread,
      ].join("\n  "),
    );
  const titles = new Set(
    guessed.flatMap(({ block }) => block.columns.map(({ title }) => plainWords(title))),
  );
  const missed = Object.keys(columns).filter((title) => !titles.has(plainWords(title)));
  if (missed.length > 0)
    throw new UsageError(
      `${book}: has no column titled ${missed.map((title) => quoted(title)).join(", ")} in the blocks found; "gearproof map" without --columns lists their titles`,
    );
  writeWhole(out, writeMapFile(guessed.map(({ map }) => map)));
  return { guessed, unread };
}

/** What was guessed, in lines for people. */
export const guessedWords = ({ guessed, unread }: Guessed, out: string): string =>
  [
    ...guessed.flatMap(({ map, confidence, evidence, block }) => [
      `${map.sheet} row ${map.titles}: ${map.kind} (${confidence}: ${evidence})`,
      ...block.columns
        .filter(({ title }) => title !== "")
        .map(({ title, field }) => `  "${title}": ${field.evidence} (${field.confidence})`),
    ]),
    ...unread.map((one) => `Left out: ${one}`),
    `Wrote ${out}; look through it and correct it before it is used.`,
  ].join("\n");
