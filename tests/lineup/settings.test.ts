import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { USUAL_POINTS } from "../../src/lineup/settings";
import { readLineup } from "../../src/records/readLineup";
import { english } from "../support/inWords";
import { SAMPLE } from "../support/lineups";

const read = (settings: object) =>
  readLineup(JSON.stringify({ ...JSON.parse(readFileSync(SAMPLE, "utf8")), ...settings }));
const errors = (settings: object) => {
  const found = read(settings);
  return found.ok ? [] : found.errors.map(({ path, message }) => `${path}: ${message(english)}`);
};

const GAS = { kind: "gas", reason: "seen to by its maker" };
const HORN = { kind: "function", item: "Horn", document: "INV-3 (invented)" };
const PLINTH = { kind: "dimensions", item: "Plinth", least: 90, document: "INV-3 (invented)" };
const JOINTS = { activity: "Joints", type: "hold", guards: ["withstand"] };

test("what a project may set", () => {
  expect(
    errors({ leaveOut: [GAS], checkItems: [HORN, PLINTH], inspectionPoints: [JOINTS] }),
  ).toEqual([]);
});

test("a project that names no inspection points has the usual ones; an empty list means none", () => {
  const points = (settings: object) => {
    const found = read(settings);
    return found.ok ? found.value.inspectionPoints : undefined;
  };
  expect(points({})).toEqual(USUAL_POINTS);
  expect(points({ inspectionPoints: [] })).toEqual([]);
});

test.each([
  [{ leaveOut: [GAS, GAS] }, /^leaveOut\[1\]\.kind: "gas" is left out twice/],
  [{ leaveOut: [{ kind: "gases", reason: "x" }] }, /^leaveOut\[0\]\.kind: must be one of docum/],
  [{ leaveOut: [{ kind: "gas" }] }, /^leaveOut\[0\]\.reason: is missing/],
  [{ checkItems: [HORN, HORN] }, /^checkItems\[1\]\.item: two check items are named/],
  [
    { checkItems: [{ ...HORN, applies: ["=H99"] }] },
    /^checkItems\[0\]\.applies\[0\]: "=H99" is neither a panel nor a bus section/,
  ],
  [
    { checkItems: [{ ...HORN, least: 3 }] },
    /^checkItems\[0\]: an item of function is not measured/,
  ],
  [{ checkItems: [{ ...PLINTH, least: undefined }] }, /^checkItems\[0\]: .* give its least or its/],
  [
    { checkItems: [{ ...HORN, kind: "gas" }] },
    /^checkItems\[0\]\.kind: must be one of installation/,
  ],
  [{ checkItems: [{ ...PLINTH, most: 80 }] }, /^checkItems\[0\]: least must be below most/],
  [{ inspectionPoints: [JOINTS, JOINTS] }, /^inspectionPoints\[1\]\.activity: two inspection poi/],
  [
    { inspectionPoints: [{ ...JOINTS, type: "witness" }] },
    /^inspectionPoints\[0\]: only a hold point guards/,
  ],
])("%j: says where, what and what would be right", (settings, message) => {
  const found = errors(settings);
  expect(found).toHaveLength(1);
  expect(found[0]).toMatch(message);
});
