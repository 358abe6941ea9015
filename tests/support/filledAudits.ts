import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { readBook } from "../../src/xlsx/readBook";
import { type AuditCase, auditRun } from "./auditRun";

const fileOf = (name: string) =>
  readFileSync(fileURLToPath(new URL(`audit/${name}`, import.meta.url)));

/**
 * By auditor the differences that he calls harmless and of which the check says something all the same:
 * what an export gave was changed by hand, which nobody can know to be harmless; a leak rate without a limit
 * cannot be judged; a number that is text now is counted by no formula, which is a note; one whose decimal mark can be
 * read two ways is not guessed; an item struck out as not applicable, of which another sheet says that it is there.
 */
const TOLD = {
  third: new Set(["HN05", "HN09", "HN10", "HN11", "HN12", "HN13"]),
  fourth: new Set(["HN04", "HN09", "HN10", "HN13", "HN15", "MN03"]),
  fifth: new Set(["HN05", "HN06", "HN08", "HN10", "HN11", "HN13", "MN12"]),
  sixth: new Set(["G6H-H09", "G6H-H13", "G6M-H03", "G6M-H05"]),
} as const satisfies Readonly<Record<string, ReadonlySet<string>>>;

/** Auditors who put their faults into both filled samples, as these were then. */
export type FilledAuditor = keyof typeof TOLD;
export const FILLED_AUDITORS = Object.keys(TOLD) as FilledAuditor[];

/** What the check does not find of theirs, and why. */
export const FILLED_NOT_FOUND: ReadonlyMap<string, string> = new Map();

/**
 * Each fault of such an auditor's by itself, and each of his harmless differences. Of the third one the second
 * half of each list was kept from whoever wrote rules until the first was found; of the later ones it still is.
 */
export async function filledRun(
  auditor: FilledAuditor,
  part: (all: readonly AuditCase[]) => readonly AuditCase[] = (all) => all,
): ReturnType<typeof auditRun> {
  const told: ReadonlySet<string> = TOLD[auditor];
  const runs = [];
  for (const name of ["harbour", "mesa"]) {
    const cases = JSON.parse(fileOf(`${auditor}-${name}.json`).toString("utf8"));
    const harmless = cases.harmless.filter(({ id }: AuditCase) => !told.has(id));
    runs.push(
      await auditRun(
        { faults: [...part(cases.faults)], harmless: [...part(harmless)] },
        await readBook(fileOf(`${auditor}-${name}.xlsx`)),
      ),
    );
  }
  return {
    faults: runs.flatMap(({ faults }) => faults),
    harmless: runs.flatMap(({ harmless }) => harmless),
  };
}
