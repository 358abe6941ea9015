import fc from "fast-check";
import { expect, test } from "vitest";
import type { Row } from "../../src/records/kind";
import { contact } from "../../src/records/kinds/contact";
import { insulation } from "../../src/records/kinds/insulation";
import { voltageTransformer } from "../../src/records/kinds/voltageTransformer";
import { withstand } from "../../src/records/kinds/withstand";
import { written } from "../../src/records/written";
import { judge } from "../../src/standards/judge";

test.each([
  // A worked-out number has four figures at most, and the decimals of its column (common practice, no source).
  [contact, { corrected: 18.02041 }, "corrected", "18.0"],
  [contact, { corrected: 88.9945 }, "corrected", "89.0"],
  [insulation, { corrected: 48_626.8 }, "corrected", "48630"],
  [insulation, { corrected: 7280 }, "corrected", "7280"],
  [insulation, { polarization: 1.24324 }, "polarization", "1.24"],
  [insulation, { polarization: 2 }, "polarization", "2.00"],
  [voltageTransformer, { error: -0.666_667 }, "error", "-0.667"],
  [voltageTransformer, { error: -0.000_04 }, "error", "0.00"],
  // A ratio of a column that shows percent.
  [contact, { spread: 0.148_148 }, "spread", "15 %"],
  [contact, { spread: 0.148_148, spreadMost: 0.5 }, "spreadMost", "50 %"],
  [contact, { spreadMost: "n/a" }, "spreadMost", "n/a"],
  // What was typed stands as it is, however it was read.
  [contact, { reading: 17.123_456_7 }, "reading", "17.1234567"],
  [contact, { reading: "< 0.5" }, "reading", "< 0.5"],
  // A bound stays on its side of what it was worked out as.
  [insulation, { corrected: "> 9387400" }, "corrected", "> 9387000"],
  [insulation, { corrected: "< 12.3401" }, "corrected", "< 12.4"],
  // A limit that is worked out is never written higher than it is.
  [withstand, { required: 37.777_777_8 }, "required", "37.7777"],
  [withstand, { required: 27 }, "required", "27"],
  [contact, { corrected: null }, "corrected", ""],
] as [typeof contact, Row, string, string][])("%#", (kind, row, id, text) => {
  expect(written(kind, row, id)).toBe(text);
});

test("a number that misses its limit by less than it is written with gets more figures", () => {
  const at = (corrected: number) => written(contact, { corrected, maximum: 50 }, "corrected");
  expect(at(50.0004)).toBe("50.0004");
  expect(at(49.9996)).toBe("49.9996");
  expect(at(50)).toBe("50.0");
  expect(at(50.4)).toBe("50.4");
});

test("what is written is judged as what was worked out is, on either side of any limit", () => {
  const number = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(number, fc.double({ min: -1e-4, max: 1e-4, noNaN: true }), (limit, off) => {
      const corrected = limit * (1 + off);
      const row = { corrected, maximum: limit };
      const [value, most] = ["corrected", "maximum"].map((id) => Number(written(contact, row, id)));
      expect(most).toBeLessThanOrEqual(limit * (1 + 1e-12));
      expect(judge(value, limit, "most")).toBe(judge(corrected, limit, "most"));
    }),
    { numRuns: 2000 },
  );
});
