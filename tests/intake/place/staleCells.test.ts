import { expect, test } from "vitest";
import { placeReadings } from "../../../src/intake/place/placeReadings";
import { staleCells } from "../../../src/intake/place/staleCells";
import { readExport } from "../../../src/intake/table/readExport";
import { evaluate } from "../../../src/records/evaluate";
import { type RecordKind, type Row, verdictOf } from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import type { OwnLayout } from "../../../src/sheets/snapshot";
import { english, inWords } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";

const lineup = sampleLineup();
const insulation = KINDS.find(({ id }) => id === "insulation") as RecordKind;
/** The first record, tested on 2026-11-02 (46328) at 40 °C; invented. */
const tested: Row = {
  reading: 900,
  testVoltage: 5000,
  temperature: 40,
  humidity: 55,
  date: 46_328,
  by: "Crew 1",
  instrument: "IR-1",
  remarks: "wet",
};
const rows = insulation.rows(lineup).map((row, at) => (at === 0 ? { ...row, ...tested } : row));
const first = rows[0] as Row;
const HEAD = "Panel,Part,Combination,Stage,R (MΩ)";
const LINE = `${first.object},${first.part},${first.combination},${first.stage},800`;

const place = (more: string, cells: string) => {
  const read = readExport(`${HEAD}${more}\n${LINE}${cells}\n`, { name: "ir.csv" });
  if (!read.ok) throw new Error(read.say(english));
  const { placed, kept, unplaced } = placeReadings(read.value, [{ kind: insulation, rows }], {
    replace: true,
  });
  const after = { ...first, ...Object.fromEntries(placed.map((one) => [one.column, one.value])) };
  return { after, kept: kept.map(({ column, value }) => [column, value]), said: unplaced };
};

test("a reading of another day takes the conditions and the trail of the test before off the record", () => {
  const { after, kept, said } = place(",Date", ",2026-11-09");
  expect(after).toMatchObject({
    reading: 800,
    date: 46_335,
    testVoltage: null,
    temperature: null,
    humidity: null,
    by: null,
    instrument: null,
    remarks: "wet",
  });
  expect(Object.fromEntries(kept as [string, unknown][])).toEqual({
    reading: 900,
    date: 46_328,
    testVoltage: 5000,
    temperature: 40,
    humidity: 55,
    by: "Crew 1",
    instrument: "IR-1",
  });
  expect(inWords(said).map(({ reason }) => reason)).toEqual([
    expect.stringMatching(
      /^replaces a reading and does not give .*\(40\).*, which was of the test before and goes to the history/,
    ),
  ]);
});

test("so the new reading is not corrected by the old temperature, and is not judged without one", () => {
  const judged = evaluate(insulation, [place(",Date", ",2026-11-09").after], lineup);
  expect(verdictOf(judged[0] as Row)).not.toBe("Pass");
  expect(judged[0]?.corrected ?? "").not.toBe(evaluate(insulation, [first], lineup)[0]?.corrected);
});

test("where no day is told it may be another test, and the old day goes too", () => {
  const { after } = place("", "");
  expect(after).toMatchObject({ reading: 800, temperature: null, date: null });
});

test("conditions that the line gives take the place of the old", () => {
  const { after } = place(",Temperature (°C),Date", ",21,2026-11-09");
  expect(after).toMatchObject({ reading: 800, temperature: 21, humidity: null });
});

test("a correction of the same day leaves the conditions and says so", () => {
  const { after, said } = place(",Date", ",2026-11-02");
  expect(after).toMatchObject({ reading: 800, temperature: 40, by: "Crew 1", date: 46_328 });
  expect(inWords(said).map(({ reason }) => reason)).toEqual([
    expect.stringMatching(/which is of the same day and stays/),
  ]);
});

test("in an own layout, a temperature that stands for several records stays with the others", () => {
  const at = new Map([
    ["reading", 0],
    ["temperature", 1],
    ["humidity", 2],
  ]);
  const place = (row: number, column: number) => ({ row: column === 1 ? 7 : 7 + row, column });
  const ownLayout: OwnLayout = {
    place,
    holds: (row, column) => ({ ...place(row, column), value: null }),
    written: (_row, _column, value) => value,
  };
  const table = { kind: insulation, at, table: { name: "Own", ownLayout }, rows };
  const { gone, left } = staleCells(table, 0, new Set(["reading"]), 46_335);
  expect(gone.map(({ id }) => id)).toEqual(["humidity"]);
  expect(left.map(({ column, why }) => [column.id, why])).toEqual([["temperature", "other rows"]]);
});
