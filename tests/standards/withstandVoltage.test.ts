import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { seriesI, seriesII } from "../../src/standards/iec62271-1.2017";
import { CLASS_NAMES, factory } from "../../src/standards/ieeeC37.20.2.2015";
import { type WithstandTest, withstandVoltage } from "../../src/standards/withstandVoltage";
import { english } from "../support/inWords";

const usual: WithstandTest = { basis: "IEC", place: "factory", wave: "AC", part: "main" };
const find = (rated: number, change: Partial<WithstandTest> = {}) =>
  withstandVoltage(rated, { ...usual, ...change });
const kV = (rated: number, change: Partial<WithstandTest> = {}) => {
  const found = find(rated, change);
  return found.ok ? found.value.value : found.kind;
};

describe("IEC", () => {
  // IEC 62271-1, common values (memory; 24 kV: 50 kV read): U_r, U_d, across the isolating distance.
  it.each([
    [3.6, 10, 12],
    [7.2, 20, 23],
    [12, 28, 32],
    [17.5, 38, 45],
    [24, 50, 60],
    [36, 70, 80],
    [52, 95, 110],
    [72.5, 140, 160],
  ])("%d kV: %d kV, isolating %d kV", (rated, main, isolating) => {
    expect(kV(rated)).toBe(main);
    expect(kV(rated, { part: "isolating" })).toBe(isolating);
  });

  // 80 % of U_d on site (read in a gear maker's manual).
  it.each([
    [12, 22.4],
    [24, 40],
    [36, 56],
  ])("on site %d kV: %d kV", (rated, site) => {
    expect(kV(rated, { place: "site" })).toBe(site);
  });

  // A stress is never taken from another row (common practice): the nearest rows are named instead.
  it.each([11, 12.1, 13.8, 40.5])(
    "%d kV has no level of its own, and gets none of another",
    (rated) => {
      expect(kV(rated)).toBe("none");
      expect(kV(rated, { place: "site" })).toBe("none");
    },
  );

  it("names both neighbours and what to do", () => {
    const found = find(13.8);
    expect(!found.ok && found.say(english)).toContain("nearest: 12 kV and 17.5 kV");
    expect(!found.ok && found.say(english)).toContain("plate");
  });

  // Series II: the levels of ANSI C37.20 in a handbook (read there): 4.76 kV 19, 15 kV 36, 27 kV 60, 38 kV 80.
  it.each([
    [4.76, 19, 15.2],
    [15, 36, 28.8],
    [15.5, 50, 40],
    [27, 60, 48],
    [38, 80, 64],
  ])("series II, %d kV: factory %d kV, on site %d kV", (rated, factory, site) => {
    expect(kV(rated)).toBe(factory);
    expect(kV(rated, { place: "site" })).toBe(site);
  });

  it("keeps from deciding by what only memory has: 8.25 kV, and series II of the older edition", () => {
    expect(find(8.25)).toMatchObject({ value: { source: { certainty: "memory" } } });
    expect(find(15, { editions: { "IEC 62271-1": "2007" } })).toMatchObject({
      value: { source: { edition: "2007", certainty: "memory" } },
    });
  });

  it("has no answer beyond its rows, for low voltage, or for DC", () => {
    expect(kV(100)).toBe("none");
    expect(kV(0.4)).toBe("none");
    expect(kV(12, { wave: "DC" })).toBe("none");
  });

  // IEC 62271-1 (memory): auxiliary circuits 2 kV, 1 min; 1 kV, 1 s accepted as routine.
  it("control wiring", () => {
    expect(kV(12, { part: "control" })).toBe(2);
    expect(kV(12, { part: "control", place: "site" })).toBe(1);
  });
});

describe("NETA", () => {
  // IEEE C37.20.2 (read in a handbook) and ANSI/NETA MTS-2019, table 100.2 (read): factory AC, site AC, site DC.
  const rows: [number, number, number, number | "none"][] = [
    [4.76, 19, 14, 20],
    [8.25, 36, 27, 37.5],
    [15, 36, 27, 37.5],
    [27, 60, 45, "none"],
    [38, 80, 60, "none"],
  ];
  it.each(rows)("%d kV: factory %d kV, site %d kV, DC %s", (rated, factory, site, dc) => {
    expect(kV(rated, { basis: "NETA" })).toBe(factory);
    expect(kV(rated, { basis: "NETA", place: "site" })).toBe(site);
    expect(kV(rated, { basis: "NETA", place: "site", wave: "DC" })).toBe(dc);
  });

  it.each(rows)("%d kV: on site three quarters of the factory value, rounded", (rated) => {
    for (const wave of ["AC", "DC"] as const) {
      const [factory, site] = (["factory", "site"] as const).map((place) =>
        kV(rated, { basis: "NETA", place, wave }),
      );
      if (typeof factory !== "number") expect(site).toBe("none");
      else expect(Math.abs(Number(site) - 0.75 * factory)).toBeLessThanOrEqual(0.25);
    }
  });

  // DC at full level 50 kV at 8.25 kV and 15 kV (read): √2 times the AC value (practice), rounded.
  it.each([4.76, 8.25, 15])("%d kV: DC is about √2 times AC", (rated) => {
    const [ac, dc] = (["AC", "DC"] as const).map((wave) => kV(rated, { basis: "NETA", wave }));
    expect(Math.abs(Number(dc) - Math.SQRT2 * Number(ac))).toBeLessThan(1);
  });

  // ANSI/NETA MTS-2019, table 100.2 (read): 0.254 kV to 0.635 kV: 1.6 / 2.3; 0.730 kV to 1.058 kV: 2.2 / 3.1.
  it.each([
    [0.254, 1.6, 2.3],
    [0.635, 1.6, 2.3],
    [1.058, 2.2, 3.1],
  ])("low voltage on site, %d kV: %d / %d kV", (rated, ac, dc) => {
    expect(kV(rated, { basis: "NETA", place: "site" })).toBe(ac);
    expect(kV(rated, { basis: "NETA", place: "site", wave: "DC" })).toBe(dc);
  });

  // Names of nominal classes in the trade (practice): 5 kV class is 4.76 kV and so on.
  it.each([
    [5, 4.76],
    [25, 27],
    [35, 38],
  ])("%d kV class is rated %d kV, and says so", (name, rated) => {
    for (const place of ["factory", "site"] as const) {
      expect(kV(name, { basis: "NETA", place })).toBe(kV(rated, { basis: "NETA", place }));
      expect(find(name, { basis: "NETA", place })).toMatchObject({
        value: { source: { note: expect.stringContaining(`${rated} kV`) } },
      });
    }
  });

  it.each([7.2, 12, 13.8, 15.5, 17.5, 34.5])(
    "%d kV is no rating of the table: no level",
    (rated) => {
      for (const place of ["factory", "site"] as const)
        expect(kV(rated, { basis: "NETA", place })).toBe("none");
    },
  );

  // ANSI/NETA MTS-2015 (read) prints 37 kV where MTS-2019 prints 37.5 kV.
  it("by the edition that the project asks for", () => {
    const dc = (more: Partial<WithstandTest>) =>
      kV(15, { basis: "NETA", place: "site", wave: "DC", ...more });
    expect(dc({})).toBe(37.5);
    expect(dc({ editions: { "ANSI/NETA": "MTS-2015" } })).toBe(37);
    expect(dc({ purpose: "maintenance" })).toBe(37.5);
  });

  it("never takes a low-voltage circuit to a medium-voltage factory row", () => {
    expect(kV(0.48, { basis: "NETA" })).toBe("none");
  });

  it("has no answer beyond 38 kV or across the isolating distance", () => {
    expect(kV(40.5, { basis: "NETA" })).toBe("none");
    expect(kV(15, { basis: "NETA", part: "isolating" })).toBe("none");
  });

  // IEEE C37.20.2 (memory): control wiring 1.5 kV, 1 min.
  it("control wiring", () => {
    expect(kV(15, { basis: "NETA", part: "control" })).toBe(1.5);
    expect(kV(15, { basis: "NETA", part: "control", place: "site" })).toBe(1.125);
    expect(kV(15, { basis: "NETA", part: "control", wave: "DC" })).toBe("none");
  });
});

it("tells its source and how sure it is", () => {
  for (const place of ["factory", "site"] as const)
    expect(find(12, { place })).toMatchObject({ value: { source: { certainty: "quoted" } } });
  // Acceptance tests cite the acceptance standard, maintenance tests the maintenance standard.
  expect(find(15, { basis: "NETA", place: "site" })).toMatchObject({
    value: { source: { document: "ANSI/NETA ATS", edition: "2025", certainty: "quoted" } },
  });
  expect(find(15, { basis: "NETA", place: "site", purpose: "maintenance" })).toMatchObject({
    value: { source: { document: "ANSI/NETA MTS", edition: "2019", certainty: "read" } },
  });
});

describe("no input makes a level higher than the next lower rated row's", () => {
  const any = fc.oneof(
    fc.double({ min: 0.1, max: 80, noNaN: true }),
    fc.integer({ min: 1, max: 80 }),
    fc.constantFrom(4.76, 8.25, 15.5, 25.8, 17.5, 13.8, 34.5, 72.5, 5, 25, 35),
  );
  it.each(["IEC", "NETA"] as const)("%s", (basis) => {
    const [rows, names] =
      basis === "IEC"
        ? [
            [...seriesI.rows, ...seriesII.rows].map(({ ratedkV, main }) => [ratedkV, main]),
            new Map(),
          ]
        : [factory.rows.map(({ ratedkV, AC }) => [ratedkV, AC]), CLASS_NAMES];
    fc.assert(
      fc.property(any, fc.constantFrom("factory" as const, "site" as const), (rated, place) => {
        const found = kV(rated, { basis, place });
        if (typeof found !== "number" || rated < 1.1) return;
        const meant = names.get(rated) ?? rated;
        const lower = rows.filter(([at]) => (at ?? 0) <= meant).map(([, level]) => level ?? 0);
        expect(found).toBeLessThanOrEqual(Math.max(...lower));
      }),
    );
  });
});

it.each([0, -12, Number.NaN])("refuses a rated voltage of %d", (rated) => {
  expect(find(rated).ok).toBe(false);
  expect(find(rated, { part: "control" }).ok).toBe(false);
});
