import { expect, test } from "vitest";
import type { Report } from "../../src/check/check";
import type { Finding } from "../../src/check/findings/finding";
import { guessMaps } from "../../src/intake/ownLayout/guessMaps";
import type { Lineup } from "../../src/lineup/lineup";
import { memoizeFor } from "../../src/quantities/memoizeFor";
import type { CellValue } from "../../src/records/kind";
import { keyIds } from "../../src/records/kind";
import type { Plan } from "../../src/sheets/plan/plan";
import { recordTables } from "../../src/sheets/recordTable";
import { type Snapshot, tablesOf } from "../../src/sheets/snapshot";
import { reportOf as checkedReport } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { EARTH_BAR, equipped, longLineup } from "../support/lineups";
import { type MemoryBook, memoryBook } from "../support/memoryBook";

/** The day on which the workbooks here are checked: 24 November 2026. */
export const TODAY = 46_350;

type Changes = NonNullable<Parameters<typeof longLineup>[1]>;
type Fill = typeof SOUND;

/** A sound workbook of so many panels: every row passes and nothing is to be said. */
export const soundOf = (panels: number, changes?: Changes, fill?: Fill): MemoryBook =>
  memoryBook(soundPlan(panels, changes, fill));

function soundPlan(panels: number, changes: Changes = {}, fill: Fill = {}): Plan {
  const lineup = longLineup(panels, {
    criteria: [
      { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
      EARTH_BAR,
    ],
    withstand: { wave: "AC", seconds: 60 },
    ...changes,
  });
  return filledPlan(lineup, 11, {
    ...SOUND,
    GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
    ...fill,
  });
}

const SOUND_PLAN = soundPlan(3);

export const sound = (): MemoryBook => memoryBook(SOUND_PLAN);

/** A lineup with transformers, relays, meters and cables, soundly tested; 12 kV cables by the project's own values. */
export const soundlyEquipped = (panels = 3): MemoryBook => memoryBook(equippedPlan(panels));

/** The plan of such a lineup: the same one for the same number of panels. */
function equippedPlan(panels: number): Plan {
  const before = EQUIPPED.get(panels);
  if (before) return before;
  const lineup = equipped(longLineup(panels, { basis: "IEC" }));
  const plan = filledPlan(
    {
      ...lineup,
      criteria: [
        ...lineup.criteria,
        { from: "project", quantity: "insulation minimum MΩ", value: 2000, document: "invented" },
        { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
        EARTH_BAR,
      ],
    },
    11,
    {
      ...SOUND,
      GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 22.4 }),
    },
  );
  EQUIPPED.set(panels, plan);
  return plan;
}

const EQUIPPED = new Map<number, Plan>();

export const reportOf = (snapshot: Snapshot, today = TODAY): Report =>
  checkedReport(snapshot, today);

export const findingsOf = (snapshot: Snapshot, today = TODAY): readonly Finding[] =>
  reportOf(snapshot, today).findings;

/** What one rule finds in a workbook. */
export const ofRule = (snapshot: Snapshot, rule: string): Finding[] =>
  findingsOf(snapshot).filter((finding) => finding.rule === rule);

/** What is said of a sound workbook as it is made, whichever rule is asked about. */
const untouched = memoizeFor((make: () => MemoryBook) => findingsOf(make().snapshot));

/** Tables of the sound workbook. */
export const INSULATION = "GearInsulation";
export const WITHSTAND = "GearWithstand";
export const CONTACT = "GearContact";
export const TORQUE = "GearTorque";

export interface Fault {
  /** What was done. */
  readonly name: string;
  readonly spoil: (book: MemoryBook) => void;
  /** The cell at which the rule must find it. */
  readonly table: string;
  readonly row: number;
  readonly header: string;
  readonly weight: Finding["weight"];
  /** Of the message: what is wrong and what would be right. */
  readonly says: RegExp;
  /** The sound workbook that it is put into. */
  readonly book?: () => MemoryBook;
}

/** Tests that a rule finds each fault, once, at its cell, and says what is wrong. */
export const finds = (rule: string, faults: readonly Fault[]) =>
  test.each(faults.map((fault) => [fault.name, fault] as const))(
    `${rule} finds %s`,
    (_name, { spoil, table, row, header, weight, says, book: make = sound }) => {
      expect(untouched(make).filter((finding) => finding.rule === rule)).toEqual([]);
      const book = make();
      spoil(book);
      const found = ofRule(book.snapshot, rule);
      expect(found.map((one) => [one.address, one.weight])).toEqual([
        [book.at(table, row, header), weight],
      ]);
      expect(found[0]?.message).toMatch(says);
      expect(found[0]?.sheet).toBe(
        tablesOf(book.snapshot).find(({ name }) => name === table)?.sheet,
      );
    },
  );

/** Tests that a rule has nothing to say of what is excused, or said by another rule. */
export const keepsQuiet = (
  rule: string,
  cases: readonly (readonly [
    name: string,
    spoil: (book: MemoryBook) => void,
    make?: () => MemoryBook,
  ])[],
) =>
  test.each(cases.map((one) => [one[0], one] as const))(`${rule} keeps quiet: %s`, (_name, one) => {
    const [, spoil, make = sound] = one;
    const book = make();
    spoil(book);
    expect(ofRule(book.snapshot, rule)).toEqual([]);
  });

/** Row of a table by its key cells; the first that has all these words among them. */
export function rowOf(book: MemoryBook, table: string, ...words: readonly CellValue[]): number {
  const found = recordTables(book.snapshot).find((one) => one.table.name === table);
  const at = found?.rows.findIndex((row) =>
    words.every((word) => keyIds(found.kind).some((id) => row[id] === word)),
  );
  if (at === undefined || at < 0) throw new Error(`no row ${words.join(" · ")} in ${table}`);
  return at;
}

/** What a cell of a table holds, and its formula. */
export function cellOf(book: MemoryBook, table: string, row: number, header: string) {
  const found = tablesOf(book.snapshot).find(({ name }) => name === table);
  const column = found?.headers.indexOf(header) ?? -1;
  return {
    value: found?.cell(row, column) ?? null,
    formula: found?.formula(row, column) ?? "",
    rowCount: found?.rowCount ?? 0,
  };
}

/** What the check says of one sheet of somebody's own, `Poles`, by the columns that are guessed in it. */
export function checkedSheet(lineup: Lineup, rows: readonly (readonly CellValue[])[]): Report {
  const snapshot: Snapshot = {
    lineup,
    sheets: [
      {
        name: "Poles",
        tables: [],
        cells: {
          rowCount: rows.length,
          columnCount: 8,
          cell: (row, column) => rows[row]?.[column] ?? null,
          formula: () => undefined,
        },
      },
    ],
  };
  const maps = guessMaps(snapshot, lineup, () => {}).map(({ map }) => map);
  return checkedReport({ ...snapshot, maps }, TODAY);
}
