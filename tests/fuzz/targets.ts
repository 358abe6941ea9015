import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { strFromU8, strToU8, type Unzipped, unzipSync, zipSync } from "fflate";
import { mappedTables } from "../../src/intake/ownLayout/mappedTables";
import { placeReadings } from "../../src/intake/place/placeReadings";
import { readExport } from "../../src/intake/table/readExport";
import { decode } from "../../src/intake/text/decode";
import { readSynonyms } from "../../src/intake/words/synonyms";
import {
  memoryXml,
  readMemoryXml,
  readRememberedXml,
  rememberedXml,
} from "../../src/memory/memory";
import { KINDS } from "../../src/records/kinds";
import { readLineup } from "../../src/records/readLineup";
import { readMapFile } from "../../src/sheets/kept/layoutMap";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot } from "../../src/sheets/snapshot";
import { readBook, writeBook } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { english } from "../support/inWords";
import { longLineup, SAMPLE, sampleLineup } from "../support/lineups";
import { RICH } from "../xlsx/richBooks";
import { changed, type Mutation } from "./mutate";

/** Something that files are given to: what they are made of, and what must hold of one whose bytes were changed. */
export interface Target {
  readonly bases: readonly Uint8Array[];
  /**
   * @param base which of the bases it was made of, where that is known
   * @throws where it ends in anything but an outcome or a message of ours
   */
  readonly given: (file: Uint8Array, base?: number) => Promise<void> | void;
  /** How a file is changed, where not simply in its bytes. */
  readonly mutate?: (mutation: Mutation) => Uint8Array;
  /** How much of all runs it gets. */
  readonly share: number;
}

/** Not what a person is to read. */
const RAW =
  /Cannot read|undefined|not a function|Invalid array|is not iterable|Maximum call stack|out of memory/;

const sound = (reason: string): void => {
  if (reason.trim() === "" || RAW.test(reason)) throw new Error(`no message of ours: ${reason}`);
};

/** Does something with a workbook: an outcome, or a message of ours. */
async function outcome<T>(work: () => Promise<T>): Promise<T | undefined> {
  try {
    return await work();
  } catch (error) {
    if ((error as Error).name !== "BookError") throw error;
    sound((error as Error).message);
    return undefined;
  }
}

const FIXTURES = "tests/xlsx/fixtures";
const FILES = readdirSync(FIXTURES)
  .filter((name) => name.endsWith(".xlsx"))
  .map((name) => readFileSync(join(FIXTURES, name)));
const BOOKS: readonly Unzipped[] = [
  ...FILES.map((file) => unzipSync(file)),
  ...Object.values(RICH).map((make) => unzipSync(make().file)),
];

const MARK = {
  rule: "future-date",
  weight: "stop",
  sheet: "Own",
  address: "B2",
  message: "invented",
} as const;

/** How many cells each sheet of a snapshot holds, by its name. */
const heldBy = ({ sheets }: Snapshot): ReadonlyMap<string, number> =>
  new Map(
    sheets.map(({ name, cells }) => {
      let held = 0;
      for (let row = 0; row < Math.min(cells?.rowCount ?? 0, 300); row++)
        for (let column = 0; column < Math.min(cells?.columnCount ?? 0, 60); column++)
          if ((cells?.cell(row, column) ?? null) !== null) held += 1;
      return [name, held];
    }),
  );

const isSheet = (name: string) => /worksheets\/[^/]+\.xml$/.test(name);
const plan = planFor(longLineup(1));
const filledSheets = await Promise.all(
  BOOKS.map(async (parts) => heldBy(await readBook(zipSync(parts, { level: 0 })))),
);

/** Which part of a workbook is changed. */
const partOf = (parts: Unzipped, part: number): string => {
  const names = Object.keys(parts).filter((name) => /\.(xml|rels|vml)$/.test(name));
  return names[part % names.length] ?? "";
};

const partChanged = ({ base, part, changes }: Mutation): Uint8Array => {
  const parts = BOOKS[base] as Unzipped;
  const name = partOf(parts, part);
  return zipSync(
    { ...parts, [name]: changed(parts[name] ?? new Uint8Array(), changes) },
    { level: 0 },
  );
};

/** A sheet's part damaged: what is read of it is not empty where it held something. */
const sheetChanged = ({ base, part, changes }: Mutation): Uint8Array => {
  const parts = BOOKS[base] as Unzipped;
  const names = Object.keys(parts).filter(isSheet);
  const name = names[part % names.length] ?? "";
  return zipSync(
    { ...parts, [name]: changed(parts[name] ?? new Uint8Array(), changes) },
    { level: 0 },
  );
};

async function bookGiven(file: Uint8Array): Promise<void> {
  const read = await outcome(async () => readBook(file));
  const marked = await outcome(() => markFile(file, [MARK]));
  // What we have written can be read.
  if (read && marked) await readBook(marked);
  if (file.length % 32 === 0) await outcome(() => writeBook(plan, file));
}

async function sheetGiven(file: Uint8Array, base?: number): Promise<void> {
  const read = await outcome(async () => readBook(file));
  const before = base === undefined ? undefined : filledSheets[base];
  if (!read || !before) return;
  for (const [name, held] of heldBy(read))
    if (held === 0 && (before.get(name) ?? 0) > 0)
      throw new Error(`"${name}" is read as an empty sheet`);
}

/** Enough of an export to hold all that it has of facts and titles. */
const firstLines = (file: Uint8Array): Uint8Array => {
  let end = 0;
  for (let line = 0; line < 14 && end < file.length; line++)
    end = file.indexOf(10, end) + 1 || file.length;
  return file.subarray(0, end);
};

const SAMPLES = "sample-workbooks";
const EXPORTS = readdirSync(SAMPLES)
  .filter((name) => /\.(csv|tsv|txt)$/.test(name))
  .map((name) => firstLines(readFileSync(join(SAMPLES, name))));
const lineup = sampleLineup();
const rows = KINDS.filter(({ id }) => ["contact", "insulation", "timing"].includes(id)).map(
  (kind) => ({ kind, rows: kind.rows(lineup) }),
);

function exportGiven(file: Uint8Array): void {
  const decoded = decode(file);
  if (!decoded.ok) {
    sound(decoded.say(english));
    return;
  }
  const read = readExport(decoded.value.text, { name: "changed.csv" });
  if (!read.ok) {
    sound(read.say(english));
    return;
  }
  const { placed, unplaced } = placeReadings(read.value, rows, { replace: false });
  for (const { reason } of unplaced) sound(reason(english));
  for (const { value } of placed)
    if (typeof value === "number" && !Number.isFinite(value)) throw new Error(`${value} is placed`);
}

const text = (file: Uint8Array) => strFromU8(file);

function lineupGiven(file: Uint8Array): void {
  const read = readLineup(text(file));
  if (read.ok) planFor(read.value);
  else for (const { message } of read.errors) sound(message(english));
}

const own: Snapshot = await readBook(readFileSync(join(FIXTURES, "own-layout.xlsx")));
const MAPS = [
  {
    sheet: own.sheets[0]?.name ?? "",
    kind: "contact",
    titles: 2,
    shape: "wide",
    columns: { Bay: "object", Device: "part" },
    left: 1,
    right: 9,
    facts: { Stage: "before" },
    means: { object: { B1: "=H01" } },
    down: ["Bay"],
  },
  { sheet: "Contacts", kind: "contact", titles: 1 },
];

function mapGiven(file: Uint8Array): void {
  const read = readMapFile(text(file));
  if (!read.ok) sound(read.say(english));
  else
    for (const { message } of mappedTables(own, lineup, read.value).problems)
      sound(message(english));
}

function wordsGiven(file: Uint8Array): void {
  const read = readSynonyms(text(file));
  if (!read.ok) sound(read.say(english));
}

async function memoryGiven(file: Uint8Array): Promise<void> {
  await outcome(async () => readMemoryXml(text(file)));
  const remembered = await outcome(async () => readRememberedXml(text(file)));
  if (remembered?.maps) mappedTables(own, lineup, remembered.maps);
}

const json = (value: unknown) => strToU8(JSON.stringify(value, null, 1));

export const TARGETS = {
  "a workbook's package": { bases: FILES, given: bookGiven, share: 0.15 },
  "a part of a workbook": {
    bases: BOOKS.map(() => new Uint8Array()),
    given: bookGiven,
    mutate: partChanged,
    share: 0.2,
  },
  "a sheet of a workbook": {
    bases: BOOKS.map(() => new Uint8Array()),
    given: sheetGiven,
    mutate: sheetChanged,
    share: 0.2,
  },
  "an export": { bases: EXPORTS, given: exportGiven, share: 0.15 },
  "a lineup": {
    bases: [readFileSync(SAMPLE), json(longLineup(1)), json(longLineup(2, { basis: "IEC" }))],
    given: lineupGiven,
    share: 0.1,
  },
  "a map file": { bases: [json(MAPS), json({ maps: MAPS })], given: mapGiven, share: 0.07 },
  "a file of words": {
    bases: [json({ object: ["Schakelveld", "Cel"], reading: ["Meetwaarde"] })],
    given: wordsGiven,
    share: 0.03,
  },
  "custom XML": {
    bases: [
      strToU8(memoryXml({ lineup: longLineup(1) })),
      strToU8(rememberedXml({ mappings: [], maps: readMaps(), words: { object: ["Cel"] } })),
      strToU8(
        rememberedXml({
          mappings: [],
          maps: [],
          words: { object: Array.from({ length: 20_000 }, (_, at) => `Cel ${at}`) },
        }),
      ),
    ],
    given: memoryGiven,
    share: 0.1,
  },
} as const satisfies Readonly<Record<string, Target>>;

function readMaps() {
  const read = readMapFile(strFromU8(json(MAPS)));
  return read.ok ? read.value : [];
}
