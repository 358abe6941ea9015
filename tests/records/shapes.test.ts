import { describe, expect, test } from "vitest";
import { evaluate } from "../../src/records/evaluate";
import { KINDS } from "../../src/records/kinds";
import { readLineup } from "../../src/records/readLineup";
import { rowsOf } from "../../src/records/rowsOf";
import { planFor } from "../../src/sheets/plan/plan";
import { reconcile } from "../../src/sheets/plan/reconcile";
import { reportOf } from "../support/checkBook";
import { memoryBook } from "../support/memoryBook";

/** Lineups of other shapes, all invented: what each needs, and the limits that its ratings bring. */
type Draft = Record<string, unknown>;

const vacuum = (ratedA: number) => ({ breaker: { medium: "vacuum", ratedA } });
const gas = (ratedA: number) => ({
  breaker: {
    medium: "SF6",
    ratedA,
    gas: { fillingMPa: 0.55, alarmMPa: 0.5, lockoutMPa: 0.48, pressure: "gauge" },
  },
});
const contactor = {
  breaker: { designation: "Q1", medium: "vacuum", device: "fused contactor", ratedA: 400 },
};
const panel = (designation: string, type: string, section: string, more: Draft = {}) => ({
  designation,
  type,
  section,
  ...more,
});
const lineup = (basis: string, voltagekV: number, panels: Draft[], more: Draft = {}) => ({
  project: { name: "Invented", site: "Nowhere (invented)" },
  basis,
  ratings: { voltagekV, frequencyHz: basis === "IEC" ? 50 : 60, busbarA: 1250, controlV: 110 },
  panels,
  ...more,
});

interface Shape {
  readonly name: string;
  readonly lineup: Draft;
  readonly sections: number;
  /** Rows by kind that the shape decides. */
  readonly rows: Readonly<Record<string, number>>;
  /** Site withstand voltage, kV, and where it is published; none where the basis gives none. */
  readonly withstandkV: number;
}

const SHAPES: readonly Shape[] = [
  {
    name: "single bus, 3.6 kV, IEC, vacuum",
    lineup: lineup("IEC", 3.6, [
      panel("K1", "incomer", "A", vacuum(1250)),
      panel("K2", "feeder", "A", vacuum(630)),
      panel("K3", "metering", "A"),
    ]),
    sections: 1,
    // Two joints of three phases between three panels, and two breakers of three poles.
    rows: { contact: 12, gas: 0, timing: 4 },
    // IEC 62271-1 (memory): 10 kV; 80 % of it on site (read in a maker's manual).
    withstandkV: 8,
  },
  {
    name: "two buses with coupler and riser, 12 kV, IEC, SF6",
    lineup: lineup("IEC", 12, [
      panel("K1", "incomer", "A", gas(2000)),
      panel("K2", "feeder", "A", gas(1250)),
      panel("K3", "bus coupler", "A", gas(2000)),
      panel("K4", "riser", "B"),
      panel("K5", "incomer", "B", gas(2000)),
    ]),
    sections: 2,
    // Joints K1-K2-K3 and K4-K5, the link from coupler to riser, four breakers.
    rows: { contact: 3 * 4 + 4 * 3, gas: 4, timing: 8 },
    // IEC 62271-1 (memory): 28 kV; 80 % of it.
    withstandkV: 22.4,
  },
  {
    name: "two incomers without a coupler, 17.5 kV, IEC",
    lineup: lineup("IEC", 17.5, [
      panel("K1", "incomer", "A", vacuum(1250)),
      panel("K2", "feeder", "A", vacuum(1250)),
      panel("K3", "incomer", "A", vacuum(1250)),
    ]),
    sections: 1,
    rows: { contact: 15, gas: 0, timing: 6 },
    // IEC 62271-1 (memory): 38 kV; 80 % of it.
    withstandkV: 30.4,
  },
  {
    name: "ring-main extension without breakers but one, 24 kV, IEC",
    lineup: lineup("IEC", 24, [
      panel("R1", "feeder", "Ring", { cables: [{ designation: "W1", ratedkV: 24 }] }),
      panel("R2", "feeder", "Ring", { cables: [{ designation: "W2", ratedkV: 24 }] }),
      panel("R3", "transformer feeder", "Ring", gas(630)),
    ]),
    sections: 1,
    rows: { contact: 9, gas: 1, timing: 2, cable: 6 },
    // IEC 62271-1 (read for 24 kV): 50 kV; 80 % of it.
    withstandkV: 40,
  },
  {
    name: "fused contactor feeders, 7.2 kV, IEC",
    lineup: lineup("IEC", 7.2, [
      panel("M1", "incomer", "A", vacuum(1250)),
      panel("M2", "motor feeder", "A", contactor),
      panel("M3", "motor feeder", "A", contactor),
    ]),
    sections: 1,
    rows: { contact: 15, timing: 2, mechanism: 1 },
    // IEC 62271-1 (memory): 20 kV; 80 % of it.
    withstandkV: 16,
  },
  {
    name: "single bus, 15 kV, NETA",
    lineup: lineup("NETA", 15, [
      panel("K1", "incomer", "A", vacuum(1200)),
      panel("K2", "feeder", "A", vacuum(1200)),
    ]),
    sections: 1,
    rows: { contact: 9, timing: 4 },
    // ANSI/NETA MTS-2019 table 100.2 (read): metal-clad 15 kV, 27 kV AC.
    withstandkV: 27,
  },
  {
    name: "single bus, 38 kV class, NETA",
    lineup: lineup("NETA", 38, [
      panel("K1", "incomer", "A", gas(1200)),
      panel("K2", "feeder", "A", gas(1200)),
    ]),
    sections: 1,
    rows: { contact: 9, gas: 2 },
    // ANSI/NETA MTS-2019 table 100.2 (read): metal-clad 38 kV, 60 kV AC.
    withstandkV: 60,
  },
  {
    name: "single bus, 36 kV, IEC",
    lineup: lineup("IEC", 36, [
      panel("K1", "incomer", "A", gas(1250)),
      panel("K2", "feeder", "A", gas(1250)),
    ]),
    sections: 1,
    rows: { contact: 9, gas: 2 },
    // IEC 62271-1 (memory): 70 kV; 80 % of it.
    withstandkV: 56,
  },
];

describe.each(SHAPES)("$name", ({ lineup: json, sections, rows, withstandkV }) => {
  const read = readLineup(JSON.stringify(json));
  if (!read.ok) throw new Error(JSON.stringify(read.errors));
  const described = read.value;

  test("needs these rows", () => {
    const counts = Object.fromEntries(
      KINDS.filter(({ id }) => id in rows).map((kind) => [kind.id, rowsOf(kind, described).length]),
    );
    expect(counts).toEqual(rows);
    expect(new Set(described.panels.map(({ section }) => section)).size).toBe(sections);
  });

  test("its withstand voltage is the published one", () => {
    const withstand = KINDS.find(({ id }) => id === "withstand");
    if (!withstand) throw new Error();
    const required = evaluate(withstand, rowsOf(withstand, described), described).map((row) =>
      Number(row.required),
    );
    expect(required.length).toBeGreaterThan(0);
    for (const kV of required) expect(kV).toBeCloseTo(withstandkV, 9);
  });

  test("builds, and building again changes nothing; a blank workbook only lacks what is to be entered", () => {
    const plan = planFor(described);
    const { snapshot } = memoryBook(plan);
    const again = reconcile(plan, snapshot);
    expect(again.create).toEqual([]);
    expect(again.change.flatMap(({ writes }) => writes)).toEqual([]);
    const rules = (isFinal: boolean) => [
      ...new Set(reportOf(snapshot, 46_400, isFinal).findings.map(({ rule }) => rule)),
    ];
    expect(rules(false)).toEqual([]);
    expect(rules(true)).toEqual(["still-open"]);
  });
});

test("a contactor is called by its name, and what a breaker alone has is not asked of it", () => {
  const shape = SHAPES.find(({ name }) => name.startsWith("fused"));
  const read = readLineup(JSON.stringify(shape?.lineup));
  if (!read.ok) throw new Error();
  const parts = (id: string, object: string) => {
    const kind = KINDS.find((one) => one.id === id);
    return kind
      ? rowsOf(kind, read.value)
          .filter((row) => row.object === object)
          .map(({ part }) => part)
      : [];
  };
  expect(parts("contact", "M2")).toContain("Contactor Q1");
  expect(parts("function", "M2")).toContain(
    "A blown fuse opens the contactor and is shown; one phase out is not run on",
  );
  expect(parts("function", "M2").join()).not.toContain("Spring");
  expect(parts("function", "M1").join()).not.toContain("blown fuse");
  expect(parts("installation", "M2").join()).toContain("Fuses: type");
});
