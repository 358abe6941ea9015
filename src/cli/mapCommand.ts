import { type GuessedMap, guessMaps } from "../intake/guessMaps";
import { lineupOfSheets } from "../sheets/lineupOfSheets";
import { writeMapFile } from "../sheets/tableMap";
import { UsageError, writeWhole } from "./files";
import { openBookAs } from "./openBookAs";

/** The maps, and for each block that is left out its first line and why. */
interface Guessed {
  readonly guessed: readonly GuessedMap[];
  readonly unread: readonly string[];
}

/** Guesses how a workbook in somebody's own layout is read as records, and writes the map file. */
export async function guessBook(
  book: string,
  out: string,
  lineup: string | undefined,
): Promise<Guessed> {
  const { snapshot } = await openBookAs(book, { lineup });
  const known = snapshot.lineup ?? lineupOfSheets(snapshot);
  if (!known)
    throw new UsageError(`${book}: does not tell its lineup; give it with --lineup LINEUP.json`);
  const unread: string[] = [];
  const guessed = guessMaps(snapshot, known, (sheet, line, reason) =>
    unread.push(`${sheet} row ${line}: ${reason}`),
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
