import { type GuessedMap, guessMaps } from "../intake/guessMaps";
import { lineupOfSheets } from "../sheets/lineupOfSheets";
import { writeMapFile } from "../sheets/tableMap";
import { UsageError, writeWhole } from "./files";
import { openBookAs } from "./openBookAs";

/** Guesses how a workbook in somebody's own layout is read as records, and writes the map file. */
export async function guessBook(
  book: string,
  out: string,
  lineup: string | undefined,
): Promise<readonly GuessedMap[]> {
  const { snapshot } = await openBookAs(book, { lineup });
  const known = snapshot.lineup ?? lineupOfSheets(snapshot);
  if (!known)
    throw new UsageError(`${book}: does not tell its lineup; give it with --lineup LINEUP.json`);
  const guessed = guessMaps(snapshot, known);
  if (guessed.length === 0)
    throw new UsageError(
      `${book}: has no block with titles whose lines find a row of the lineup; write a map by hand (see "gearproof map --help")`,
    );
  writeWhole(out, writeMapFile(guessed.map(({ map }) => map)));
  return guessed;
}

/** What was guessed, in lines for people. */
export const guessedWords = (guessed: readonly GuessedMap[], out: string): string =>
  [
    ...guessed.flatMap(({ map, confidence, evidence, block }) => [
      `${map.sheet} row ${map.titles}: ${map.kind} (${confidence}: ${evidence})`,
      ...block.columns
        .filter(({ title }) => title !== "")
        .map(({ title, field }) => `  "${title}": ${field.evidence} (${field.confidence})`),
    ]),
    `Wrote ${out}; look through it and correct it before it is used.`,
  ].join("\n");
