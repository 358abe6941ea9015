import { describe, expect, it, test } from "vitest";
import { type BoltSize, bolts, proofStress } from "../../src/engineering/bolts";
import { boltTorque } from "../../src/engineering/boltTorque";

const torque = (...args: Parameters<typeof boltTorque>) => {
  const found = boltTorque(...args);
  return found.ok ? found.value : Number.NaN;
};

describe("boltTorque", () => {
  // ISO 898-1 (read): the proof load of an M12 bolt of class 8.8 is 580 × 84.3 = 48,894 N.
  it("starts from the proof load of ISO 898-1", () => {
    expect(bolts.M12.area * proofStress["8.8"].small).toBeCloseTo(48894, 6);
    expect(torque("M12", "8.8", 0.2, 0.5)).toBeCloseTo(0.2 * 0.5 * 48894 * 0.012, 9);
  });

  // ISO 898-1 (read): 600 MPa above M16 for class 8.8.
  it("takes the greater proof stress above M16", () => {
    expect(torque("M20", "8.8", 0.2, 0.5)).toBeCloseTo(0.2 * 0.5 * 600 * 245 * 0.02, 9);
  });

  // Stress area of ISO coarse threads, π/4 (d − 0.9382 P)² (ISO 898-1, memory), pitches of ISO 261 (memory).
  it.each<[BoltSize, number]>([
    ["M8", 1.25],
    ["M10", 1.5],
    ["M12", 1.75],
    ["M14", 2],
    ["M16", 2],
    ["M20", 2.5],
    ["M24", 3],
  ])("has the stress area of %s by the formula", (size, pitch) => {
    const { diameter, area } = bolts[size];
    expect(area / ((Math.PI / 4) * (diameter - 0.9382 * pitch) ** 2)).toBeCloseTo(1, 2);
  });

  // Gear makers' tables for busbar and earth-bar joints, N·m (read).
  it.each<[BoltSize, number, number]>([
    ["M8", 17, 21],
    ["M10", 35, 42],
    ["M12", 50, 70],
    ["M16", 135, 170],
  ])("stays inside gear makers' range for %s: %d to %d N·m", (size, least, most) => {
    expect(torque(size, "8.8")).toBeGreaterThanOrEqual(least);
    expect(torque(size, "8.8")).toBeLessThanOrEqual(most);
  });

  // practice: busbar bolts of a metal-clad lineup get at least 65 N·m.
  it("gives an M12 busbar bolt at least 65 N·m", () => {
    expect(torque("M12", "8.8")).toBeGreaterThanOrEqual(65);
  });

  it("knows its sizes and grades, and refuses odd factors", () => {
    expect(boltTorque("M13" as "M12", "8.8")).toMatchObject({ kind: "wrong" });
    expect(boltTorque("M12", "A2-70" as "8.8")).toMatchObject({ kind: "wrong" });
    expect(boltTorque("M12", "8.8", 0)).toMatchObject({ kind: "range" });
    expect(boltTorque("M12", "8.8", 0.2, 1.2)).toMatchObject({ kind: "range" });
  });
});

// Stress areas, in², as four published tables print them: 1/2-13 0.1419, 5/8-11 0.226, 3/4-10 0.334; proof loads of SAE
// J429, psi, as a fastener maker's table prints them: grade 5 to 1 in 85,000, grade 2 to 3/4 in 55,000.
test.each([
  ["1/2", "SAE 5", (0.2 * 0.56 * 0.1419 * 85_000 * 0.5) / 12],
  ["5/8", "SAE 2", (0.2 * 0.56 * 0.226 * 55_000 * 0.625) / 12],
  ["3/4", "SAE 8", (0.2 * 0.56 * 0.3345 * 120_000 * 0.75) / 12],
] as const)("%s %s: %d lbf·ft", (size, grade, poundFeet) => {
  const found = boltTorque(size, grade);
  expect(found.ok && found.value / 1.355818 / poundFeet).toBeCloseTo(1, 2);
});
