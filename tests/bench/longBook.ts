import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { KINDS } from "../../src/records/kinds";
import { rowsOf } from "../../src/records/rowsOf";
import { writeBook } from "../../src/workbook/file";
import { filledPlan, SOUND } from "../support/fill";
import { longLineup } from "../support/lineups";

type Criteria = NonNullable<Parameters<typeof longLineup>[1]>;

const CRITERIA: Criteria = {
  criteria: [{ from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" }],
};

/** How many record rows a lineup of so many panels needs. */
const rowsOfPanels = (panels: number) => {
  const lineup = longLineup(panels, CRITERIA);
  return KINDS.reduce((sum, kind) => sum + rowsOf(kind, lineup).length, 0);
};

/** The file of a soundly filled record workbook of about so many rows, made where it is not there yet. */
export async function longBook(rows: number, seed = 1): Promise<string> {
  const file = `.cache/bench-${rows}${seed === 1 ? "" : `-${seed}`}.xlsx`;
  if (existsSync(file)) return file;
  mkdirSync(".cache", { recursive: true });
  const panels = Math.max(1, Math.round(rows / ((rowsOfPanels(110) - rowsOfPanels(10)) / 100)));
  const plan = filledPlan(longLineup(panels, CRITERIA), seed, {
    ...SOUND,
    GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
  });
  writeFileSync(file, (await writeBook(plan)).file);
  return file;
}
