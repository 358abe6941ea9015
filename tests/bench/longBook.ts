import { existsSync, mkdirSync, readdirSync, statSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import type { Row } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { rowsOf } from "../../src/records/rowsOf";
import { writeBook } from "../../src/xlsx/file";
import { filledPlan, SOUND } from "../support/fill";
import { longLineup } from "../support/lineups";
import { joinBooks, type Part } from "./joinedBook";

type Criteria = NonNullable<Parameters<typeof longLineup>[1]>;

const CRITERIA: Criteria = {
  criteria: [{ from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" }],
};

/** How many record rows a lineup of so many panels needs. */
const rowsOfPanels = (panels: number) => {
  const lineup = longLineup(panels, CRITERIA);
  return KINDS.reduce((sum, kind) => sum + rowsOf(kind, lineup).length, 0);
};

/** Volts along an earth bar: the bars are compared with the lowest of them all, which is therefore the same in each part. */
const earthBar = ({ object }: Row, next: () => number): number =>
  object === "Section 1" ? 0.1 : Math.round(100 + 30 * next()) / 1000;

/** Rows of a part: longer workbooks are joined of several. */
const PART = 100_000;

/** What makes the workbooks: one made before the last change to it holds formulas of before, which the check finds. */
const MAKERS = ["src/records", "src/sheets", "src/xlsx", "src/look"];

const isOfNow = (file: string): boolean =>
  existsSync(file) &&
  MAKERS.flatMap((folder) =>
    readdirSync(folder, { encoding: "utf8" }).map((name) => join(folder, name)),
  ).every((source) => statSync(source).mtimeMs < statSync(file).mtimeMs);

/** The file of a soundly filled record workbook of about so many rows, made where it is not there as of now. */
export async function longBook(rows: number, seed = 1): Promise<string> {
  const file = `.cache/bench-${rows}${seed === 1 ? "" : `-${seed}`}.xlsx`;
  if (isOfNow(file)) return file;
  mkdirSync(".cache", { recursive: true });
  const count = Math.max(1, Math.round(rows / PART));
  const perPanel = (rowsOfPanels(110) - rowsOfPanels(10)) / 100;
  const panels = Math.max(1, Math.round(rows / count / perPanel));
  const parts: Part[] = [];
  for (let part = 0; part < count; part++) {
    const plan = filledPlan(longLineup(panels, CRITERIA), seed + part, {
      ...SOUND,
      GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
      GearEarthing: (row, next) => ({
        ...SOUND.GearEarthing?.(row, next),
        ...(row.part === "Earth bar" ? { reading: earthBar(row, next) } : {}),
      }),
    });
    parts.push({
      file: (await writeBook(plan)).file,
      panels: part * panels,
      sections: part * Math.ceil(panels / 10),
    });
  }
  if (parts.length === 1) writeFileSync(file, parts[0]?.file ?? "");
  else await joinBooks(parts, file);
  return file;
}
