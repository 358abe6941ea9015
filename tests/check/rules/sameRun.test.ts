import { expect, test } from "vitest";
import type { Row } from "../../../src/records/kind";
import { filledPlan, SOUND } from "../../support/fill";
import { sampleLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";
import { cellOf, INSULATION, ofRule, rowOf, sound, soundlyEquipped, soundOf } from "../support";

const R = "R 1 min MΩ";

/** Copies the readings of one panel's insulation "before" to another's. */
function copy(book: MemoryBook, from: string, to: string, digits?: number) {
  const [first, second] = [from, to].map((panel) => rowOf(book, INSULATION, panel, "before")) as [
    number,
    number,
  ];
  for (let step = 0; step < 3; step++) {
    const { value } = cellOf(book, INSULATION, first + step, R);
    const rounded = digits === undefined ? value : Number(Number(value).toPrecision(digits));
    book.set(INSULATION, first + step, R, rounded);
    book.set(INSULATION, second + step, R, rounded);
  }
  return second;
}

test("a panel's readings copied to another are asked about, with how seldom chance makes them", () => {
  const book = sound();
  const second = copy(book, "=K0001", "=K0003");
  const found = ofRule(book.snapshot, "same-run");
  expect(found.map(({ address, weight }) => [address, weight])).toEqual([
    [book.at(INSULATION, second, R), "query"],
  ]);
  expect(found[0]?.message).toMatch(/digit for digit those of =K0001 .*once in .*Were they copied/);
});

test("nothing is said of readings with too few digits to tell a copy from chance", () => {
  const book = soundOf(
    3,
    {},
    {
      GearInsulation: (row, next) => ({ ...SOUND.GearInsulation?.(row, next), reading: 200_000 }),
    },
  );
  expect(ofRule(book.snapshot, "same-run")).toEqual([]);
});

test("nothing is said of meters at one point of their scale, which can show little else than what was applied", () => {
  const book = memoryBook(
    filledPlan(sampleLineup(), 11, {
      ...SOUND,
      // Applied at the point; shown within 1 % of the scale, amperes whole and kilovolts to the hundredth.
      GearMetering: (row, next) => {
        const reference = (Number(row.fullScale) * Number(row.pointPercent)) / 100;
        const off = Number(row.fullScale) * (0.02 * next() - 0.01);
        const step = row.inUnit === "kV" ? 0.01 : 1;
        return {
          ...SOUND.GearMetering?.(row, next),
          reference,
          shown: Number((step * Math.round((reference + off) / step)).toFixed(2)),
        };
      },
    }),
  );
  expect(ofRule(book.snapshot, "same-run").filter(({ record }) => record === "metering")).toEqual(
    [],
  );
});

const TIMING = "GearTiming";

/** Copies the times of closing and opening of one breaker to another. */
const copyTimes = (book: MemoryBook, headers: readonly string[]) => {
  const [first, second] = ["=K0001", "=K0003"].map((panel) => rowOf(book, TIMING, panel));
  for (const row of [0, 1])
    for (const header of headers)
      book.set(
        TIMING,
        (second ?? 0) + row,
        header,
        cellOf(book, TIMING, (first ?? 0) + row, header).value,
      );
  return second ?? 0;
};

test("closing and opening of a breaker are one run of six, of which three alike are nothing", () => {
  const book = soundOf(6);
  const row = copyTimes(book, ["L1 ms", "L2 ms", "L3 ms"]);
  const found = ofRule(book.snapshot, "same-run");
  expect(found.map(({ address }) => address)).toEqual([book.at(TIMING, row, "L1 ms")]);
  expect(found[0]?.message).toMatch(/and the 1 after it: 6 readings are digit for digit/);
  const few = soundOf(6);
  copyTimes(few, ["L1 ms"]);
  expect(ofRule(few.snapshot, "same-run")).toEqual([]);
});

test("the readings of one bus section at another", () => {
  const book = soundOf(12);
  const [first, second] = ["Section 1", "Section 2"].map((section) =>
    rowOf(book, INSULATION, section, "before"),
  );
  for (let row = 0; row < 6; row++)
    book.set(
      INSULATION,
      (second ?? 0) + row,
      R,
      cellOf(book, INSULATION, (first ?? 0) + row, R).value,
    );
  expect(ofRule(book.snapshot, "same-run").map(({ address }) => address)).toEqual([
    book.at(INSULATION, second ?? 0, R),
  ]);
});

const CABLES = "GearCable";
/** Copies some columns of the three phases of one panel's cable to another's. */
const copyColumns = (book: MemoryBook, to: string, headers: readonly string[], phases = 3) => {
  const [first, second] = [rowOf(book, CABLES, "=K0001"), rowOf(book, CABLES, to)];
  for (let step = 0; step < phases; step++)
    for (const header of headers)
      book.set(CABLES, second + step, header, cellOf(book, CABLES, first + step, header).value);
  return second;
};

test("one column of three phases copied to another cable is a copy, though the others were left as measured", () => {
  const book = soundlyEquipped(6);
  expect(ofRule(book.snapshot, "same-run")).toEqual([]);
  const second = copyColumns(book, "=K0004", ["Insulation MΩ"]);
  expect(ofRule(book.snapshot, "same-run").map(({ address }) => address)).toEqual([
    book.at(CABLES, second, "Insulation MΩ"),
  ]);
});

test("one phase alike in one column is no copy", () => {
  const book = soundlyEquipped(6);
  copyColumns(book, "=K0004", ["Insulation MΩ"], 1);
  expect(ofRule(book.snapshot, "same-run")).toEqual([]);
});

test("the currents of a curve copied to another winding are asked about, though its voltages are its own", () => {
  const book = soundlyEquipped();
  const table = "GearExcitation";
  const headers = Array.from({ length: 10 }, (_, at) => `A ${at + 1}`);
  for (const header of headers) {
    const { value } = cellOf(book, table, 0, header);
    book.set(table, 4, header, value);
  }
  const [found, ...others] = ofRule(book.snapshot, "same-run");
  expect(others).toEqual([]);
  expect(found).toMatchObject({ address: book.at(table, 4, "A 1"), weight: "query" });
});

test("a joint of two digits copied with the temperatures of its phases is asked about; with one temperature it is not", () => {
  const spoilt = (temperatures: readonly number[]) => {
    const whole = (row: Row, next: () => number) => {
      const filled = SOUND.GearContact?.(row, next);
      return { ...filled, reading: Math.round(Number(filled?.reading)) };
    };
    const book = soundOf(6, {}, { GearContact: whole });
    [0, 3].forEach((first) => {
      [31, 33, 29].forEach((value, step) => {
        book.set("GearContact", first + step, "R µΩ", value);
        book.set("GearContact", first + step, "Conductor °C", temperatures[step] ?? 0);
      });
    });
    return ofRule(book.snapshot, "same-run").length;
  };
  expect(spoilt([18.6, 18.3, 17.2])).toBe(1);
  expect(spoilt([18.6, 18.6, 18.6])).toBe(0);
});
