import { expect, test } from "vitest";
import { besideNumber } from "../../../src/intake/cells/splitComment";
import { placeReadings } from "../../../src/intake/place/placeReadings";
import { readExport } from "../../../src/intake/table/readExport";
import type { RecordKind } from "../../../src/records/kind";
import { KINDS } from "../../../src/records/kinds";
import { english } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";

const contact = KINDS.find(({ id }) => id === "contact") as RecordKind;
const rows = contact.rows(sampleLineup());
const place = (text: string, at?: ReadonlyMap<string, number>) => {
  const read = readExport(text, { name: "crm.csv" });
  if (!read.ok) throw new Error(read.say(english));
  const { placed, unplaced } = placeReadings(read.value, [{ kind: contact, rows, at }], {
    replace: false,
  });
  return {
    cells: placed
      .filter(({ column }) => column !== "origin")
      .map(({ column, value }) => [column, value]),
    unplaced: unplaced.map(({ reason }) => reason(english)),
  };
};

test("a comment is what stands beside a number", () => {
  expect(besideNumber("5200 (after cleaning)")).toEqual({
    number: "5200",
    comment: "after cleaning",
  });
  expect(besideNumber("31,5 * cleaned")).toEqual({ number: "31,5", comment: "cleaned" });
  expect(besideNumber("31,5")).toBeUndefined();
  expect(besideNumber(`1 (${"a".repeat(1_000_000)})`)).toBeUndefined();
});

test("in an export the number is the reading, and the comment goes to the row's remarks", () => {
  expect(place("Panel;Part;Pole;R (µΩ)\n=H01;Q0;L1;31,5 (after cleaning)\n")).toEqual({
    cells: [
      ["reading", 31.5],
      ["remarks", "after cleaning"],
    ],
    unplaced: [],
  });
});

test("it goes behind a remark of the line's own, and each comment once", () => {
  const head = "Panel;Part;Pole;R (µΩ);Temperature (°C);Remarks";
  expect(place(`${head}\n=H01;Q0;L1;31,5 (warm);20,5 (warm);second try\n`).cells).toEqual([
    ["reading", 31.5],
    ["temperature", 20.5],
    ["remarks", "second try; warm"],
  ]);
});

test("a comment that cannot stand there is said, and the reading taken", () => {
  const without = new Map(
    contact.columns.flatMap(({ id }, at) => (id === "remarks" ? [] : [[id, at]])),
  );
  const text = "Panel;Part;Pole;R (µΩ)\n=H01;Q0;L1;31,5 (after cleaning)\n";
  expect(place(text, without)).toEqual({
    cells: [["reading", 31.5]],
    unplaced: [
      'the comment "after cleaning" beside a number is left out, its number is taken: Contacts has no column for remarks.',
    ],
  });
  expect(place("Panel;Part;Pole;R (µΩ)\n=H01;Q0;L1;31,5 (=cmd|x)\n")).toMatchObject({
    cells: [["reading", 31.5]],
    unplaced: [expect.stringMatching(/the comment "=cmd\|x" .*begins like a formula/)],
  });
});
