/**
 * The workbooks of `sample-workbooks/`, made from the invented lineups, exports and layouts.
 * `npm run docs` writes them beside the lineups; a test holds them to what is made here.
 */
import { readFileSync } from "node:fs";
import { openBook } from "../../src/intake/openBook";
import { takeIn, withResults } from "../../src/intake/takeIn";
import type { Lineup } from "../../src/lineup/lineup";
import { readLineup } from "../../src/records/readLineup";
import { planFor } from "../../src/sheets/plan/plan";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { english } from "../support/inWords";
import { HARBOUR, sampleExports } from "./sampleExports";
import { foreignBooks } from "./samples/foreignBooks";
import { mesaPlan } from "./samples/mesaEntries";

export const SAMPLE_FOLDER = "sample-workbooks";

/** The day on which the exports were taken in: 2026-11-11. */
const TAKEN_IN = 46_337;

/** Exports of the half-done workbook: what was recorded up to the contact resistance. */
const FIRST_HALF = [2, 4, 5, 6, 16, 17, 18, 20, 21];

const lineupOf = (name: string): Lineup => {
  const read = readLineup(readFileSync(`${SAMPLE_FOLDER}/${name}.lineup.json`, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.value;
};

/** Exports placed on a built workbook, as the command line places them. */
async function withExports(built: Uint8Array, names: readonly string[]): Promise<Uint8Array> {
  const texts = sampleExports(lineupOf(HARBOUR));
  const sources = names.map((name) => ({
    name,
    content: new TextEncoder().encode(texts[name] ?? ""),
  }));
  const records = openBook(await readBook(built));
  const intake = takeIn(records, sources, { replace: false }, TAKEN_IN);
  if (!intake.ok) throw new Error(intake.reason(english));
  const changes = [...withResults(records, intake.cells), ...(intake.before.change ?? [])];
  return writeCells(built, changes, intake.before);
}

/** Every sample workbook by the name of its file. */
export async function sampleBooks(): Promise<Readonly<Record<string, Uint8Array>>> {
  const harbour = lineupOf(HARBOUR);
  const built = (await writeBook(planFor(harbour))).file;
  const exports = Object.keys(sampleExports(harbour));
  const first = exports.filter((name) => FIRST_HALF.includes(Number(/\d+/.exec(name)?.[0])));
  return {
    "harbour-half-done.xlsx": await withExports(built, first),
    "harbour-tested.xlsx": await withExports(built, exports),
    "mesa-tested.xlsx": (await writeBook(mesaPlan(lineupOf("mesa-metal-clad")))).file,
    ...(await foreignBooks()),
  };
}
