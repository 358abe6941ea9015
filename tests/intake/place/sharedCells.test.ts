import { expect, test } from "vitest";
import { placeReadings } from "../../../src/intake/place/placeReadings";
import { readExport } from "../../../src/intake/table/readExport";
import type { RecordKind, Row } from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import type { OwnLayout } from "../../../src/sheets/snapshot";
import { english } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";

/** Records of an invented own layout: readings below one another, one temperature for each three of them. */
const insulation = KINDS.find(({ id }) => id === "insulation") as RecordKind;
const empty = insulation.rows(sampleLineup()).slice(0, 6);

const layout = (rows: readonly Row[]) => {
  const at = new Map([
    ["reading", 0],
    ["temperature", 1],
  ]);
  const place = (row: number, column: number) => ({
    row: 7 + (column === 1 ? 3 * Math.floor(row / 3) : row),
    column,
  });
  const ownLayout: OwnLayout = {
    place,
    holds: (row, column) => ({
      ...place(row, column),
      value: rows[row]?.[column === 1 ? "temperature" : "reading"] ?? null,
    }),
    written: (_row, _column, value) => value,
  };
  return { kind: insulation, at, table: { name: "Own", sheet: "Site", ownLayout }, rows };
};

const place = (
  rows: readonly Row[],
  lines: readonly (readonly [row: number, reading: number, temperature: number])[],
  replace = false,
) => {
  const text = lines.map(([row, reading, temperature]) => {
    const { object, part, combination, stage } = empty[row] as Row;
    return [object, part, combination, stage, reading, temperature].join(",");
  });
  const read = readExport(
    ["Panel,Part,Combination,Stage,R (MΩ),Temperature (°C)", ...text, ""].join("\n"),
    { name: "ir.csv" },
  );
  if (!read.ok) throw new Error(read.say(english));
  const { placed, conflicts, unplaced } = placeReadings(read.value, [layout(rows)], { replace });
  return {
    placed: placed.map(({ row, column, value }) => [row, column, value]),
    conflicts: conflicts.length,
    said: unplaced.map(({ source, reason }) => `${source.line}: ${reason(english)}`),
  };
};

test("a cell that several records share takes what all lines for them say", () => {
  const { placed, said } = place(empty, [
    [0, 5000, 18.5],
    [1, 5100, 18.5],
    [3, 5300, 21],
  ]);
  expect(placed).toEqual([
    [0, "reading", 5000],
    [0, "temperature", 18.5],
    [1, "reading", 5100],
    [1, "temperature", 18.5],
    [3, "reading", 5300],
    [3, "temperature", 21],
  ]);
  expect(said).toEqual([]);
});

test("what lines say differently it takes of none of them, and the readings stand", () => {
  const { placed, said } = place(empty, [
    [0, 5000, 18.5],
    [1, 5100, 24],
    [3, 5300, 21],
  ]);
  expect(placed).toEqual([
    [0, "reading", 5000],
    [1, "reading", 5100],
    [3, "reading", 5300],
    [3, "temperature", 21],
  ]);
  expect(said).toEqual(
    [2, 3].map((line) =>
      expect.stringMatching(
        new RegExp(
          `^${line}: "Temperature °C" is one cell for several records, B8 of the sheet "Site", and lines 2 and 3 give it different values; it is left blank`,
        ),
      ),
    ),
  );
});

const tested = empty.map((row, at) => ({ ...row, reading: 900, temperature: at < 3 ? 40 : 30 }));

test("what it holds is replaced where the export has the same new value for all its records", () => {
  const { placed } = place(
    tested,
    [0, 1, 2].map((row) => [row, 800, 20] as const),
    true,
  );
  expect(placed.filter(([, column]) => column === "temperature")).toEqual(
    [0, 1, 2].map((row) => [row, "temperature", 20]),
  );
});

test("what it holds is not replaced for records that the export has nothing for, nor by lines that disagree", () => {
  const some = place(tested, [[0, 800, 20]], true);
  expect(some.placed).toEqual([]);
  expect(some.said).toEqual([
    expect.stringMatching(
      /^2: "Temperature °C" is one cell for several records, B8 of the sheet "Site", and the export has no value for 2 of them; nothing of the line is placed/,
    ),
  ]);
  const torn = place(
    tested,
    [0, 1, 2].map((row) => [row, 800, 20 + row] as const),
    true,
  );
  expect(torn.placed).toEqual([]);
  expect(torn.said).toHaveLength(3);
});

test("without replacing, a line against what stands is held back whole, as everywhere", () => {
  expect(place(tested, [[0, 800, 20]])).toMatchObject({ placed: [], conflicts: 2 });
});
