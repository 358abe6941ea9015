import { existsSync } from "node:fs";
import { isOtherLineup } from "../lineup/isOtherLineup";
import type { Lineup } from "../lineup/lineup";
import type { CommandLineText } from "../messages/commandLine";
import { readLineup } from "../records/readLineup";
import { lineupOfSheets } from "../sheets/ours/lineupOfSheets";
import { beyond, limitOf } from "../sheets/plan/limits";
import { planFor } from "../sheets/plan/plan";
import { type Built, readBook, writeBook } from "../xlsx/file";
import { readMemory } from "../xlsx/remembered";
import { named, readBytes, readText, UsageError, usageError } from "./files/files";
import { saveBook } from "./files/saveBook";

/** Reads a lineup file, or says everything that is wrong with it. */
export function loadLineup(file: string): Lineup {
  const read = readLineup(readText(file));
  if (read.ok) return read.value;
  const { errors } = read;
  throw new UsageError(({ build, told }) =>
    [
      build.errors(file, errors.length),
      ...errors.map(({ path, message }) => `  ${path}: ${message(told)}`),
    ].join("\n"),
  );
}

/** Builds the record workbook of a lineup, onto the one that is there already where there is one. */
export async function buildBook(lineupFile: string, out: string): Promise<Built> {
  const lineup = loadLineup(lineupFile);
  if (lineup.panels.length > limitOf("panels")) throw usageError(beyond("panels"), lineupFile);
  const existing = existsSync(out) ? readBytes(out) : undefined;
  if (existing) await refuseOther(lineup, lineupFile, out, existing);
  const built = await named(out, () => writeBook(planFor(lineup), existing));
  saveBook(out, built.file);
  return built;
}

/** Nothing is built onto the records of another lineup. */
async function refuseOther(lineup: Lineup, file: string, out: string, existing: Uint8Array) {
  const before =
    (await named(out, async () => readMemory(existing)?.lineup)) ??
    lineupOfSheets(await named(out, () => readBook(existing)));
  if (before && isOtherLineup(before, lineup))
    throw new UsageError(({ build }) =>
      build.otherLineup(out, lineupWords(before, build), file, lineupWords(lineup, build)),
    );
}

type BuildText = CommandLineText["build"];

const lineupWords = ({ project, panels }: Lineup, text: BuildText): string =>
  text.lineup(
    project.name,
    panels.length,
    panels[0]?.designation ?? "",
    panels.at(-1)?.designation ?? "",
  );

/** So many rows that the lineup no longer has are named. */
const MAX_NAMED = 12;

/** What a build did, in a few lines. */
export function buildWords({ done: { create, change } }: Built, text: BuildText): string {
  const added = change.filter(({ added }) => added > 0);
  const rows = added.reduce((sum, { added }) => sum + added, 0);
  const aside = change.flatMap(({ table, aside }) => aside.map((key) => `${table.name}: ${key}`));
  return [
    ...(create.length > 0
      ? [text.built(create.map(({ planned: { sheet, rows } }) => ({ sheet, rows: rows.length })))]
      : []),
    ...(change.length > 0
      ? [
          text.kept(
            change.length,
            rows,
            added.map(({ table, added }) => `${table.name}: ${added}`),
          ),
        ]
      : []),
    ...(aside.length > 0
      ? [text.aside(aside.slice(0, MAX_NAMED), Math.max(0, aside.length - MAX_NAMED))]
      : []),
  ].join("\n");
}
