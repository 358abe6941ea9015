import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { unzipSync } from "fflate";
import type { Finding } from "../../src/check/findings/finding";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot, TableSnapshot } from "../../src/sheets/snapshot";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { markFile } from "../../src/xlsx/writeMarks";
import { longLineup } from "../support/lineups";

/**
 * `tsx tests/judge/realBooks.ts FOLDER OUT [EVERY]`: opens every workbook of a folder, builds a lineup onto
 * it, fills a cell and puts back what it held, marks and takes the marks off; prints how many of them came
 * through, and what does not. Parts that were not meant are byte for byte the same. Of every so many
 * workbooks the outcome is written to OUT, for judges from outside.
 */
const [folder = "", out = "", every = "1"] = process.argv.slice(2);
const plan = planFor(longLineup(1));
mkdirSync(out, { recursive: true });

const counts = { files: 0, opened: 0, built: 0, filled: 0, marked: 0, faults: 0 };
const say = (line: string) => process.stdout.write(`${line}\n`);
const fault = (name: string, what: string) => {
  counts.faults += 1;
  say(`${name}: ${what}`);
};

/** The bytes of each part as it lies packed or unpacked; one that is damaged cannot be compared and is not. */
const partsOf = (file: Uint8Array): Map<string, Uint8Array> => {
  const parts = new Map<string, Uint8Array>();
  const names: string[] = [];
  unzipSync(file, { filter: ({ name }) => names.push(name) < 0 });
  for (const name of names)
    try {
      const bytes = unzipSync(file, { filter: (entry) => entry.name === name })[name];
      if (bytes) parts.set(name, bytes);
    } catch {
      parts.set(name, new Uint8Array());
    }
  return parts;
};

/** Parts of a workbook that are not as they were, save those that are allowed to be. */
const changed = (before: Uint8Array, after: Uint8Array, allowed: RegExp): string[] => {
  const is = partsOf(after);
  return [...partsOf(before)].flatMap(([name, bytes]) =>
    allowed.test(name) || Buffer.compare(bytes, is.get(name) ?? Buffer.from("gone")) === 0
      ? []
      : [name],
  );
};

const LISTS =
  /^(\[Content_Types\]\.xml|.*\/_rels\/workbook\.xml\.rels|xl\/(workbook|styles|sharedStrings|calcChain)\.xml)$/i;
const SHEETS = /worksheets\/[^/]+\.xml$/i;

type Place = readonly [sheet: string, row: number, column: number];

/** The first cell that holds a plain number: a text may be the header of a table. */
const plainCell = ({ sheets }: Snapshot): Place | undefined => {
  for (const { name, cells } of sheets)
    for (let row = 0; row < Math.min(cells?.rowCount ?? 0, 300); row++)
      for (let column = 0; column < Math.min(cells?.columnCount ?? 0, 60); column++)
        if (typeof cells?.cell(row, column) === "number" && !cells.formula(row, column))
          return [name, row, column];
  return undefined;
};

const put = (
  file: Uint8Array,
  [sheet, row, column]: Place,
  value: string | number | boolean | null,
) => {
  const table: TableSnapshot = {
    name: "any",
    sheet,
    top: 0,
    left: 0,
    headers: ["any"],
    rowCount: 1,
    cell: () => null,
    formula: () => undefined,
    ownLayout: {
      place: () => ({ row, column }),
      holds: () => ({ row, column, value: null }),
      written: (_row, _column, given) => given,
    },
  };
  return writeCells(file, [{ table, writes: [{ row: 0, column: 0, value }] }]);
};

/** Everything that the sheets of a workbook hold, as far as a person sees it. */
const contents = ({ sheets }: Snapshot) =>
  JSON.stringify(
    sheets.map(({ name, cells, tables }) => [
      name,
      tables.map(({ name, headers, rowCount }) => [name, headers, rowCount]),
      Array.from({ length: Math.min(cells?.rowCount ?? 0, 500) }, (_, row) =>
        Array.from({ length: Math.min(cells?.columnCount ?? 0, 60) }, (_, column) => [
          cells?.cell(row, column),
          cells?.formula(row, column),
        ]),
      ),
    ]),
  );

async function build(name: string, file: Uint8Array): Promise<Uint8Array> {
  const built = await writeBook(plan, file);
  const others = changed(file, built.file, LISTS);
  if (others.length > 0) fault(name, `built onto, and changed ${others.join(", ")}`);
  const again = await writeBook(plan, built.file);
  if (Buffer.compare(again.file, built.file) !== 0) fault(name, "built again, and changed");
  counts.built += 1;
  return built.file;
}

async function fill(name: string, file: Uint8Array, snapshot: Snapshot): Promise<Uint8Array> {
  const place = plainCell(snapshot);
  counts.filled += 1;
  if (!place) return file;
  const held = snapshot.sheets.find((sheet) => sheet.name === place[0])?.cells;
  const filled = await put(file, place, "> 5.2 GΩ");
  const others = changed(file, filled, SHEETS);
  if (others.length > 0) fault(name, `filled, and changed ${others.join(", ")}`);
  const back = await put(filled, place, held?.cell(place[1], place[2]) ?? null);
  if (contents(await readBook(back)) !== contents(snapshot))
    fault(name, "changed back, and differs");
  return filled;
}

async function mark(name: string, file: Uint8Array, { sheets }: Snapshot): Promise<Uint8Array> {
  const findings = sheets.map(
    (sheet): Finding => ({
      rule: "future-date",
      weight: "stop",
      sheet: sheet.name,
      address: "B3",
      message: "invented",
    }),
  );
  const marked = await markFile(file, findings);
  const others = changed(file, await markFile(marked, []), /styles\.xml$/i);
  if (others.length > 0) fault(name, `marked and cleared, and changed ${others.join(", ")}`);
  counts.marked += 1;
  return marked;
}

for (const [at, name] of readdirSync(folder)
  .filter((file) => /\.xls[xm]$/i.test(file))
  .entries()) {
  const file = readFileSync(join(folder, name));
  counts.files += 1;
  try {
    const snapshot = await readBook(file);
    counts.opened += 1;
    for (const [what, run] of Object.entries({ build, fill, mark }))
      try {
        const outcome = await run(name, file, snapshot);
        if (at % Number(every) === 0) writeFileSync(join(out, `${what}-${name}`), outcome);
      } catch (error) {
        say(`${name}: ${what}: ${(error as Error).message}`);
        if ((error as Error).name !== "BookError") fault(name, "no message of ours");
      }
  } catch (error) {
    say(`${name}: ${(error as Error).message}`);
    if ((error as Error).name !== "BookError") fault(name, "no message of ours");
  }
}
const { files, opened, built, filled, marked, faults } = counts;
const share = (count: number) => `${count} (${((100 * count) / opened).toFixed(1)} %)`;
say(
  `${files} workbooks: ${opened} open; of these built onto ${share(built)}, filled ${share(filled)}, marked and cleared ${share(marked)}; ${faults} faults`,
);
process.exitCode = faults > 0 ? 1 : 0;
