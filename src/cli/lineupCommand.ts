import { existsSync } from "node:fs";
import { isOtherLineup } from "../lineup/isOtherLineup";
import type { Lineup } from "../lineup/lineup";
import { howMany } from "../quantities/howMany";
import { readLineup } from "../records/readLineup";
import { lineupOfSheets } from "../sheets/ours/lineupOfSheets";
import { planFor } from "../sheets/plan";
import { readMemory } from "../xlsx/correctPackage";
import { type Built, readBook, writeBook } from "../xlsx/file";
import { named, readBytes, readText, UsageError } from "./files";
import { refuseLoss } from "./refuseLoss";
import { saveBook } from "./saveBook";

/** Reads a lineup file, or says everything that is wrong with it. */
export function loadLineup(file: string): Lineup {
  const read = readLineup(readText(file));
  if (read.ok) return read.value;
  const lines = read.errors.map(({ path, message }) => `  ${path}: ${message}`);
  throw new UsageError(`${file}: ${read.errors.length} to put right\n${lines.join("\n")}`);
}

/** Builds the record workbook of a lineup, onto the one that is there already where there is one. */
export async function buildBook(
  lineupFile: string,
  out: string,
  acceptLoss = false,
): Promise<Built> {
  const lineup = loadLineup(lineupFile);
  const existing = existsSync(out) ? readBytes(out) : undefined;
  if (existing) {
    await refuseOther(lineup, lineupFile, out, existing);
    await refuseLoss(out, existing, acceptLoss);
  }
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
    throw new UsageError(
      `${out}: holds the records of another lineup (${before.project.name}: ${listed(before)}) than ${file} describes (${lineup.project.name}: ${listed(lineup)}); give another name for a new workbook`,
    );
}

const listed = ({ panels }: Lineup): string =>
  `${howMany(panels.length, "panel")}, ${panels[0]?.designation ?? ""} to ${panels.at(-1)?.designation ?? ""}`;

/** What a build did, in a few lines. */
export function buildWords({ done }: Built, out: string): string {
  const created = done.create.map(
    ({ planned }) => `${planned.sheet} (${howMany(planned.rows.length, "row")})`,
  );
  const added = done.change.filter((change) => change.added > 0);
  const aside = done.change.flatMap((change) =>
    change.aside.map((key) => `${change.table.name}: ${key}`),
  );
  return [
    created.length > 0 ? `Built ${created.join(", ")}.` : "",
    done.change.length > 0
      ? `Kept ${howMany(done.change.length, "table")} with every reading; added ${howMany(
          added.reduce((sum, change) => sum + change.added, 0),
          "row",
        )}${added.length > 0 ? ` (${added.map((change) => `${change.table.name}: ${change.added}`).join(", ")})` : ""}.`
      : "",
    aside.length > 0
      ? `No longer in the lineup, left where they are: ${aside.slice(0, 12).join("; ")}${aside.length > 12 ? `; and ${aside.length - 12} more` : ""}.`
      : "",
    `Wrote ${out}`,
  ]
    .filter(Boolean)
    .join("\n");
}
