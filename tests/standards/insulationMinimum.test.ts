import { describe, expect, it } from "vitest";
import { insulationMinimum } from "../../src/standards/insulationMinimum";
import { insulationTestVoltage } from "../../src/standards/insulationTestVoltage";
import { english } from "../support/inWords";

// ANSI/NETA table 100.1 in MTS-2015, MTS-2019 and ATS-2025 (read): rated V, test V DC, MΩ.
const TABLE: [number, number, number][] = [
  [250, 500, 25],
  [600, 1000, 100],
  [1000, 1000, 100],
  [2500, 1000, 500],
  [5000, 2500, 1500],
  [8000, 2500, 2500],
  [15000, 2500, 5000],
  [25000, 5000, 10000],
  [34500, 5000, 100000],
  [46000, 5000, 100000],
];

describe("NETA table 100.1", () => {
  it.each(TABLE)("%d V: %d V DC, %d MΩ", (rated, test, megohm) => {
    expect(insulationMinimum(rated / 1000, { basis: "NETA" })).toMatchObject({
      value: { value: megohm },
    });
    expect(insulationTestVoltage(rated / 1000, { basis: "NETA" })).toMatchObject({
      value: { value: test },
    });
  });

  it.each([
    [0.4, 100],
    [11, 5000],
    [12, 5000],
    [15.1, 10000],
    [72.5, 100000],
  ])("%d kV takes the row that is not below it", (rated, megohm) => {
    expect(insulationMinimum(rated, { basis: "NETA" })).toMatchObject({ value: { value: megohm } });
  });

  // IEEE C37.20.2 names rated maximum and nominal voltages side by side (memory): 27 kV gear is 25 kV nominal.
  it.each([
    [4.76, 1500],
    [8.25, 2500],
    [15.5, 5000],
    [27, 10000],
    [38, 100000],
  ])(
    "%d kV, a rated maximum voltage, has the row of its nominal voltage: %d MΩ",
    (rated, megohm) => {
      expect(insulationMinimum(rated, { basis: "NETA" })).toMatchObject({
        value: { value: megohm, source: { note: expect.stringContaining("class") } },
      });
    },
  );

  it("names its document, edition and table, and that it was read", () => {
    expect(insulationMinimum(12, { basis: "NETA" })).toMatchObject({
      value: {
        source: {
          document: "ANSI/NETA ATS",
          edition: "2025",
          place: "table 100.1",
          certainty: "read",
        },
      },
    });
  });
});

describe("IEC", () => {
  it("gives no minimum, and says what to do", () => {
    const found = insulationMinimum(12, { basis: "IEC" });
    expect(found).toMatchObject({ ok: false, kind: "none" });
    expect(!found.ok && found.say(english)).toContain("project criterion");
  });

  // practice: 5 kV DC on medium-voltage buses; 500 V or 1000 V on low voltage.
  it.each([
    [0.4, 500],
    [0.69, 1000],
    [3.6, 5000],
    [12, 5000],
    [36, 5000],
  ])("%d kV is tested with %d V, by practice", (rated, volts) => {
    expect(insulationTestVoltage(rated, { basis: "IEC" })).toMatchObject({
      value: { value: volts, source: { certainty: "practice" } },
    });
  });

  it("ends at 72.5 kV", () => {
    expect(insulationTestVoltage(145, { basis: "IEC" })).toMatchObject({ ok: false, kind: "none" });
  });
});

it.each([0, -12, Number.NaN, Number.POSITIVE_INFINITY])(
  "refuses a rated voltage of %d",
  (rated) => {
    for (const basis of ["IEC", "NETA"] as const) {
      expect(insulationMinimum(rated, { basis }).ok).toBe(false);
      expect(insulationTestVoltage(rated, { basis }).ok).toBe(false);
    }
  },
);
