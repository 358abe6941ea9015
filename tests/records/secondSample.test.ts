import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import type { Row } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { readLineup } from "../../src/records/readLineup";
import { rowsOf } from "../../src/records/rowsOf";
import { lineupOfSheets } from "../../src/sheets/ours/lineupOfSheets";
import { planFor } from "../../src/sheets/plan/plan";
import { memoryBook } from "../support/memoryBook";

const SAMPLE = "sample-workbooks/mesa-metal-clad.lineup.json";

/** The invented sample by American practice: 15 kV, two mains, a tie and six feeders. */
const sample = () => {
  const read = readLineup(readFileSync(SAMPLE, "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  return read.value;
};

const rows = (id: string): Row[] => {
  const kind = KINDS.find((one) => one.id === id);
  return kind ? evaluate(kind, rowsOf(kind, sample()), sample()) : [];
};

test("says that it is invented, and has two mains, a tie and six feeders", () => {
  const { note, panels } = sample();
  expect(note).toMatch(/^Invented/);
  const count = (type: string) => panels.filter((panel) => panel.type === type).length;
  expect([count("main"), count("tie"), count("feeder")]).toEqual([2, 1, 6]);
});

test("its rows name the phases A, B and C, and nothing else", () => {
  const named = KINDS.flatMap((kind) =>
    rowsOf(kind, sample()).flatMap((row) => [row.phase, row.pole, row.combination]),
  ).filter((cell) => cell !== undefined && cell !== null);
  expect(new Set(named)).toEqual(
    new Set([
      "A",
      "B",
      "C",
      "A-E",
      "B-E",
      "C-E",
      "A-B",
      "B-C",
      "C-A",
      "A open",
      "B open",
      "C open",
      // What belongs to all three poles of a mechanism at once.
      "all",
    ]),
  );
});

// ANSI/NETA tables 100.1 and 100.2 (read): 15 kV metal-clad 27 kV on site, 36 kV on the plate, 5000 MΩ. IEEE 400.2-2013,
// table 3 (read): 21 kV. ANSI/IEEE C37.06 (in breaker makers' tables): 125 V DC closes from 100 V, trips from 70 V.
test("its limits are those of the tables", () => {
  expect(rows("withstand")[0]).toMatchObject({ basekV: 27, mostkV: 36 });
  expect(rows("insulation")[0]).toMatchObject({ minimum: 5000, testVoltageLeast: 5000 });
  expect(rows("cable")[0]).toMatchObject({ required: 21, minutesLeast: 30, minimum: 5000 });
  expect(rows("control")[0]).toMatchObject({ minimum: 2, testVoltageLeast: 1000, required: 1.125 });
});

test("is told by its sheets alone", () => {
  expect(lineupOfSheets({ sheets: memoryBook(planFor(sample())).snapshot.sheets })).toEqual(
    sample(),
  );
});
