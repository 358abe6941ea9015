import { mkdirSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { KINDS } from "../../src/records/kinds";
import { writeBook } from "../../src/workbook/file";
import { filledPlan } from "../support/fill";
import { sampleLineup } from "../support/lineups";
import { type Columns, differences } from "./agree";
import { CASES } from "./cases";
import { judgeBook } from "./judgeBook";
import { convert, openpyxl, scratch } from "./outside";
import { computedColumns } from "./recordValues";

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

const plan = filledPlan(sampleLineup(), 7);
const file = join(folder, "written.xlsx");
writeFileSync(file, (await writeBook(plan)).file);
outcome(
  "openpyxl reads every cell of a written workbook",
  differences(computedColumns(plan), columnsOf(openpyxl(file), 3)),
);
mkdirSync(join(folder, "again"), { recursive: true });
outcome(
  "LibreOffice opens a written workbook and saves every cell again",
  differences(
    computedColumns(plan),
    columnsOf(openpyxl(convert(file, "xlsx", join(folder, "again"))), 3),
  ),
);

process.stdout.write(`${passed} passed, ${failed} failed\n`);
process.exitCode = failed > 0 ? 1 : 0;

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
