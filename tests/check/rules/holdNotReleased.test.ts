import { expect, test } from "vitest";
import { cellOf, INSULATION, ofRule, rowOf, sound, soundOf, WITHSTAND } from "../support";

/** The hold point that guards the withstand test is the third of the usual points. */
test.each([
  ["not released", "Released", null, "which is not released"],
  [
    "released after the test",
    "Held on",
    46_345,
    "released on 2026-11-19, after this record of 2026-11-16",
  ],
] as const)(
  "a withstand test that went ahead of its hold point, %s",
  (_name, header, value, why) => {
    const book = sound();
    expect(ofRule(book.snapshot, "hold-not-released")).toEqual([]);
    book.set("GearInspection", 2, header, value);
    const found = ofRule(book.snapshot, "hold-not-released");
    // One for the point, at the section's first row, with the first row of each of the three panels.
    expect(found.map(({ panel, further }) => [panel, further?.length])).toEqual([["Section 1", 3]]);
    expect(found[0]).toMatchObject({ weight: "stop", address: book.at(WITHSTAND, 0, "Date") });
    expect(found[0]?.message).toContain(why);
  },
);

test("a hold point of each panel guards its panel and, with its neighbours, their section", () => {
  const book = soundOf(2, {
    inspectionPoints: [{ activity: "Covers", type: "hold", guards: ["insulation"], each: "panel" }],
  });
  expect(ofRule(book.snapshot, "hold-not-released")).toEqual([]);
  book.set("GearInspection", 1, "Released", "Not released");
  const found = ofRule(book.snapshot, "hold-not-released");
  expect(found.map(({ panel }) => panel)).toEqual(["Section 1"]);
  expect(found[0]?.further).toEqual([
    book.at(INSULATION, rowOf(book, INSULATION, "=K0002"), "Date"),
  ]);
});

test("nothing is said of rows without readings, or where inspection points are left out", () => {
  const book = sound();
  book.set("GearInspection", 2, "Released", null);
  for (let row = 0; row < cellOf(book, WITHSTAND, 0, "Panel or section").rowCount; row++)
    book.set(WITHSTAND, row, "Applied kV", null);
  expect(ofRule(book.snapshot, "hold-not-released")).toEqual([]);
  const left = soundOf(2, {
    leaveOut: [{ kind: "inspection", reason: "Invented", document: "INV-7" }],
  });
  expect(ofRule(left.snapshot, "hold-not-released")).toEqual([]);
});
