import { expect, test } from "vitest";
import type { JudgedTable } from "../../../src/check/context";
import { digitPattern } from "../../../src/check/rules/digitPattern";
import { SOUND } from "../../support/fill";
import { INSULATION, ofRule, reportOf, soundOf } from "../support";

/** Insulation readings of so many panels, rounded so that their third digit is 0 or 5. */
const rounded = (panels: number, step: number) =>
  soundOf(
    panels,
    {},
    {
      GearInsulation: (row, next) => ({
        ...SOUND.GearInsulation?.(row, next),
        reading: step * Math.round((100_000 + 800_000 * next()) / step),
      }),
    },
  );

test("third digits that are all 0 or 5 are a note, with the digits counted", () => {
  const book = rounded(12, 5000);
  const found = ofRule(book.snapshot, "digit-pattern");
  expect(found).toMatchObject([
    {
      weight: "note",
      sheet: "Insulation",
      address: book.at(INSULATION, 0, "R 1 min MΩ"),
      column: "R 1 min MΩ",
    },
  ]);
  expect(found[0]?.message).toMatch(/0: \d+, 1: 0, 2: 0, .*Does the instrument show a third digit/);
});

test("nothing is said of evenly spread digits, of few readings, or of readings close together", () => {
  expect(ofRule(rounded(12, 1).snapshot, "digit-pattern")).toEqual([]);
  expect(ofRule(rounded(2, 5000).snapshot, "digit-pattern")).toEqual([]);
  const close = soundOf(
    12,
    {},
    {
      GearInsulation: (row, next) => ({
        ...SOUND.GearInsulation?.(row, next),
        reading: 500_000 + 5000 * Math.round(next()),
      }),
    },
  );
  expect(ofRule(close.snapshot, "digit-pattern")).toEqual([]);
});

test("a sheet of many thousand readings is looked through as one of few", () => {
  const { context } = reportOf(rounded(2, 5000).snapshot);
  const table = context.tables.find(({ kind }) => kind.id === "insulation") as JudgedTable;
  const [first = {}] = table.rows;
  const rows = Array.from({ length: 200_000 }, (_, at) => ({
    ...first,
    reading: 100 + (at % 800),
  }));
  expect(digitPattern.reads === "table" && digitPattern.find({ ...table, rows }, context)).toEqual(
    [],
  );
});
