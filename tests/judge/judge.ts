import {
  copyFileSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { KINDS } from "../../src/records/kinds";
import { readBook, writeBook } from "../../src/xlsx/file";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { sampleLineup } from "../support/lineups";
import { type Columns, differences } from "./agree";
import { CASES } from "./cases";
import { functionBook, ourOutcomes, outcomeDifferences, outcomesOf } from "./functionBook";
import { judgeBook } from "./judgeBook";
import { convert, openpyxl, scratch } from "./outside";
import { computedColumns } from "./recordValues";
import { textUnderFormulas } from "./textUnderFormulas";
import { faultyPlan, findingsOf, otherWriter, readingDifferences, uncalculated } from "./writers";

/**
 * Asks the outside judges live. `--keep` writes what they computed to tests/judged, for `npm test`.
 * Ends with the counts on a line of its own; exit code 1 where anything disagrees.
 */
const keep = process.argv.includes("--keep");
const folder = scratch();
const judged = "tests/judged";
let passed = 0;
let failed = 0;
const outcome = (name: string, faults: readonly string[]) => {
  if (faults.length === 0) passed++;
  else failed++;
  process.stdout.write(
    `${faults.length === 0 ? "agrees" : "DISAGREES"}: ${name}${faults.length ? `\n  ${faults.slice(0, 5).join("\n  ")}\n  (${faults.length} in all)` : ""}\n`,
  );
};

for (const [name, make] of Object.entries(CASES)) {
  const plan = make();
  const file = join(folder, `${name}.xlsx`);
  writeFileSync(file, await judgeBook(plan));
  mkdirSync(join(folder, "computed"), { recursive: true });
  const theirs = columnsOf(openpyxl(convert(file, "xlsx", join(folder, "computed"))));
  if (keep) {
    mkdirSync(judged, { recursive: true });
    writeFileSync(join(judged, `${name}.json`), `${JSON.stringify(theirs)}\n`);
  }
  outcome(`LibreOffice's recalculation of ${name}`, differences(computedColumns(plan), theirs));
}

const functionsFile = join(folder, "functions.xlsx");
writeFileSync(functionsFile, await functionBook());
const outcomes = outcomesOf(
  openpyxl(convert(functionsFile, "xlsx", join(folder, "computed"))) as Parameters<
    typeof outcomesOf
  >[0],
);
if (keep) writeFileSync(join(judged, "functions.json"), `${JSON.stringify(outcomes)}\n`);
const ours = ourOutcomes();
for (const [name, { length }] of Object.entries(ours))
  outcome(
    `LibreOffice's native formula for ${name}, ${length} cases`,
    outcomeDifferences(ours, outcomes, name),
  );

const plan = filledPlan(sampleLineup(), 7);
const file = join(folder, "written.xlsx");
writeFileSync(file, (await writeBook(plan)).file);
outcome(
  "openpyxl reads every cell of a written workbook",
  differences(computedColumns(plan), columnsOf(openpyxl(file), 3)),
);
mkdirSync(join(folder, "again"), { recursive: true });
const again = convert(file, "xlsx", join(folder, "again"));
outcome(
  "LibreOffice opens a written workbook and saves every cell again",
  differences(computedColumns(plan), columnsOf(openpyxl(again), 3)),
);
const [written, saved] = await Promise.all([file, again].map(findingsText));
outcome(
  "a workbook that LibreOffice saved, without our memory in it, comes to the same findings",
  written === saved && written !== "[]"
    ? []
    : [`${written?.slice(0, 300)} against ${saved?.slice(0, 300)}`],
);

const other = (name: string) => join(folder, `${name}.xlsx`);
const kept = join(judged, "writers");
if (keep) mkdirSync(kept, { recursive: true });
for (const epoch of ["1900", "1904"]) {
  otherWriter("odd", epoch, other(`openpyxl-${epoch}`));
  renameSync(
    convert(other(`openpyxl-${epoch}`), "xlsx", join(folder, "again")),
    other(`libreoffice-${epoch}`),
  );
  for (const name of [`openpyxl-${epoch}`, `libreoffice-${epoch}`]) {
    const theirs = otherWriter("read", other(name));
    if (keep) writeFileSync(join(kept, `${name}.json`), `${theirs}\n`);
    outcome(
      `our reading of ${name}, cell by cell, with openpyxl's`,
      readingDifferences(await readBook(readFileSync(other(name))), JSON.parse(theirs)),
    );
  }
}
const records = join(folder, "records.xlsx");
writeFileSync(records, (await writeBook(faultyPlan())).file);
otherWriter("again", records, other("records-openpyxl"));
otherWriter("filled", records, other("records-filled"));
renameSync(convert(records, "xlsx", join(folder, "again")), other("records-libreoffice"));
if (keep)
  for (const name of readdirSync(folder).filter((file) =>
    /^(openpyxl|libreoffice|records)-.*xlsx$/.test(file),
  ))
    copyFileSync(join(folder, name), join(kept, name));
const direct = await readBook(readFileSync(records));
const same = async (name: string, wanted: readonly string[]) => {
  const found = findingsOf(await readBook(readFileSync(other(name))));
  return [
    ...wanted.filter((line) => !found.includes(line)).map((line) => `lost: ${line}`),
    ...found.filter((line) => !wanted.includes(line)).map((line) => `new: ${line}`),
  ];
};
outcome(
  "a record workbook that LibreOffice saved comes to the same findings, line by line",
  await same("records-libreoffice", findingsOf(direct)),
);
outcome(
  "a record workbook that openpyxl saved, its values gone, comes to the same findings, line by line",
  await same("records-openpyxl", findingsOf(uncalculated(direct))),
);

outcome(
  "formulas that take a cell with a bound, as LibreOffice computes them",
  await textUnderFormulas(folder),
);

process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed > 0 ? 1 : 0;

/** The findings of a workbook file, as text. */
async function findingsText(book: string): Promise<string> {
  const checked = check(await readBook(readFileSync(book)), 46_400);
  return checked.ok ? JSON.stringify(checked.report.findings) : checked.reason;
}

/** Computed columns of the record sheets as read, the header standing in the row given. */
function columnsOf(sheets: Record<string, unknown[][]>, headerRow = 0): Columns {
  return Object.fromEntries(
    KINDS.map((kind) => {
      const rows = sheets[kind.sheet] ?? [];
      const headers = rows[headerRow] ?? [];
      return [
        kind.table,
        Object.fromEntries(
          kind.columns
            .filter(({ formula }) => formula)
            .map(({ id, header }) => {
              const at = headers.indexOf(header);
              return [
                id,
                rows
                  .slice(headerRow + 1)
                  .map((row) => (row[at] ?? null) as Columns[string][string][number]),
              ];
            }),
        ),
      ];
    }),
  );
}
