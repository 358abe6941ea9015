import { type GuessedMap, guessMaps, titlesOn } from "../intake/ownLayout/guessMaps";
import { mappable, mappedTo } from "../intake/words/mappedTo";
import { titleKey, titleKeys } from "../intake/words/titleKeys";
import { quoted } from "../quantities/quoted";
import { writeMapFile } from "../sheets/layoutMap";
import { lineupOfSheets } from "../sheets/ours/lineupOfSheets";
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
  const unknown = Object.values(columns).find((field) => mappedTo(field) === undefined);
  if (unknown !== undefined)
    throw new UsageError(`Unknown field ${quoted(unknown)}; ${mappable()}`);
  const { snapshot } = await openBookAs(book, { lineup });
  const known = snapshot.lineup ?? lineupOfSheets(snapshot);
  if (!known)
    throw new UsageError(`${book}: does not tell its lineup; give it with --lineup LINEUP.json`);
  const unread: string[] = [];
  const worded = { ...snapshot, words: withWords(snapshot.words, said.synonyms) };
  if (said.columns !== undefined) refuseUnknown(book, columns, titlesOn(worded, columns));
  const guessed = guessMaps(
    worded,
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
  const more = there.length - named.length;
  throw new UsageError(
    `${book}: has no column titled ${missed.map((title) => quoted(title)).join(", ")}; ${
      named.length === 0
        ? "no row of titles is found"
        : `use one of ${named.join(", ")}${more > 0 ? ` and ${more} more` : ""}`
    }`,
  );
}

const TITLES_NAMED = 30;

/** Of a title over two lines, the lower may be said alone. */
const isTitle = (key: string, keys: ReadonlySet<string>): boolean =>
  keys.has(key) || [...keys].some((one) => one.endsWith(` ${key}`));

/** What was guessed, in lines for people. */
export const guessedWords = ({ guessed, unread }: Guessed, out: string): string =>
  [
    ...guessed.flatMap(({ map, confidence, evidence, block }) => [
      `${map.sheet} row ${map.titles}: ${map.kind} (${confidence}: ${evidence})`,
      ...(map.unit === undefined
        ? []
        : [
            `  readings without a unit: in ${map.unit}, by the heading ${quoted(block.title ?? "")} (likely)`,
          ]),
      ...block.columns
        .filter(({ title }) => title !== "")
        .map(({ name, field }) => `  "${name}": ${field.evidence} (${field.confidence})`),
    ]),
    ...unread.map((one) => `Left out: ${one}`),
    `Wrote ${out}; look through it and correct it before it is used.`,
  ].join("\n");
