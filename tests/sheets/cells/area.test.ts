import { expect, test } from "vitest";
import {
  areaAddress,
  cellCount,
  covers,
  overlap,
  readArea,
  readAreas,
} from "../../../src/sheets/cells/area";

test.each([
  ["A1", { top: 0, left: 0, bottom: 0, right: 0 }],
  ["$B$2:AA10", { top: 1, left: 1, bottom: 9, right: 26 }],
  ["Own sheet!C4", { top: 3, left: 2, bottom: 3, right: 2 }],
  ["B:C", { top: 0, left: 1, bottom: 1_048_575, right: 2 }],
  ["1:4", { top: 0, left: 0, bottom: 3, right: 16_383 }],
])("%s is an area", (address, area) => {
  expect(readArea(address)).toEqual(area);
});

test.each(["", "A0", "A1:B2:C3", "AAAA1", "A1048577", "OwnName", "A1,B2"])(
  "%s is no area",
  (address) => {
    expect(readArea(address)).toBeUndefined();
  },
);

test("a list of areas, and addresses back again", () => {
  const areas = readAreas("A1:B2, D4;F:F");
  expect(areas?.map(areaAddress)).toEqual(["A1:B2", "D4", "F:F"]);
  expect(readAreas("A1,nothing")).toBeUndefined();
});

test("areas overlap, cover each other, and have so many cells", () => {
  const [wide, part, apart] = ["A1:D9", "B2:C3", "F1"].map((text) => readArea(text));
  if (!wide || !part || !apart) throw new Error("not read");
  expect([overlap(wide, part), overlap(part, wide), overlap(wide, apart)]).toEqual([
    true,
    true,
    false,
  ]);
  expect([covers(wide, part), covers(part, wide)]).toEqual([true, false]);
  expect(cellCount(part)).toBe(4);
});
