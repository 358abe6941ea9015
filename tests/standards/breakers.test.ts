import { describe, expect, it } from "vitest";
import { coilRange } from "../../src/standards/coilRange";
import { poleSpread } from "../../src/standards/poleSpread";

describe("coilRange", () => {
  // IEC 62271-1 (memory): closing 85 % to 110 %; shunt opening 70 % to 110 % DC, 85 % to 110 % AC.
  it.each([
    [110, "closing", "DC", 93.5, 121],
    [110, "opening", "DC", 77, 121],
    [230, "opening", "AC", 195.5, 253],
    [230, "closing", "AC", 195.5, 253],
  ] as const)("IEC, %d V, %s, %s: %d V to %d V", (volts, operation, wave, least, most) => {
    expect(coilRange(volts, { operation, wave, basis: "IEC" })).toMatchObject({
      value: { value: { least, most } },
    });
  });

  // Three breaker makers' tables under ANSI/IEEE C37.06 (read).
  it.each([
    [48, "opening", 28, 56],
    [125, "opening", 70, 140],
    [250, "opening", 140, 280],
    [48, "closing", 38, 56],
    [125, "closing", 100, 140],
    [250, "closing", 200, 280],
  ] as const)("NETA, %d V DC, %s: %d V to %d V", (volts, operation, least, most) => {
    expect(coilRange(volts, { operation, wave: "DC", basis: "NETA" })).toMatchObject({
      value: { value: { least, most }, source: { certainty: "read" } },
    });
  });

  it.each([
    [110, "DC", "NETA", "none"],
    [125, "AC", "NETA", "none"],
    [0, "DC", "IEC", "range"],
    [-110, "DC", "NETA", "range"],
  ] as const)("%d V %s, %s: %s", (volts, wave, basis, kind) => {
    expect(coilRange(volts, { operation: "closing", wave, basis })).toMatchObject({ kind });
  });
});

describe("poleSpread", () => {
  // IEC 62271-100 (memory): a quarter of a cycle on closing, a sixth on opening.
  it.each([
    ["closing", 50, 5],
    ["opening", 50, 3.333],
    ["closing", 60, 4.167],
    ["opening", 60, 2.778],
  ] as const)("%s at %d Hz: %d ms", (operation, hertz, ms) => {
    const found = poleSpread(operation, hertz);
    expect(found.ok && found.value.value).toBeCloseTo(ms, 3);
  });

  it("needs a frequency", () => {
    expect(poleSpread("closing", 0)).toMatchObject({ ok: false, kind: "range" });
  });
});
