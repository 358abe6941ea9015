import { expect, test } from "vitest";
import type { CellValue } from "../../../src/records/kind";
import { sampleLineup } from "../../support/lineups";
import { CONTACT, checkedSheet, finds, keepsQuiet, soundOf } from "../support";

const drawn = () => {
  const book = soundOf(3);
  const { lineup } = book.snapshot;
  if (!lineup) throw new Error("the sound workbook has a lineup");
  return soundOf(3, {
    project: {
      ...lineup.project,
      specification: "INV-SPEC-7 (invented)",
      specificationRevision: "B",
      drawings: [{ number: "INV-E-44", revision: "C" }],
    },
  });
};

finds("names-differ", [
  {
    name: "a remark that names a superseded drawing",
    spoil: (book) => book.set(CONTACT, 2, "Remarks", "Joint as on INV-E-44 rev. B"),
    table: CONTACT,
    row: 2,
    header: "Remarks",
    weight: "query",
    says: /names INV-E-44 at revision B; the latest approved revision in the lineup is C/,
    book: drawn,
  },
  {
    name: "a criterion from another revision of the specification",
    spoil: (book) => book.set("GearCriteria", 0, "Document", "INV-SPEC-7, issue A, clause 6"),
    table: "GearCriteria",
    row: 0,
    header: "Document",
    weight: "query",
    says: /names INV-SPEC-7 at revision A; .* is B/,
    book: drawn,
  },
]);

keepsQuiet("names-differ", [
  ["the approved revision", (book) => book.set(CONTACT, 2, "Remarks", "INV-E-44 rev C"), drawn],
  [
    "a document without its revision",
    (book) => book.set(CONTACT, 2, "Remarks", "see INV-E-44, clause 6"),
    drawn,
  ],
  [
    "a document that the lineup does not list",
    (book) => book.set(CONTACT, 2, "Remarks", "INV-E-45 rev A"),
    drawn,
  ],
]);

/** What is said of the head of a sheet of somebody's own. */
const heads = (...head: readonly (readonly CellValue[])[]) => {
  const lineup = sampleLineup();
  const rows: readonly (readonly CellValue[])[] = [
    ...head,
    ["Panel", "Part", "Pole", "R (µΩ)", "Current (A)", "Date", "Tested by", "Instrument"],
    ...["L1", "L2", "L3"].map((pole) => ["H01", "Q0", pole, 31, 200, 46_330, "A. Crew", "R-9"]),
  ];
  const { findings } = checkedSheet(lineup, rows);
  return findings
    .filter(({ rule }) => rule === "names-differ")
    .map(({ address, message }) => `${address} ${message}`);
};

test("the head of another project or circuit is told at its cell", () => {
  const { project, panels } = sampleLineup();
  expect(heads(["Project:", "Another quay (invented)"])).toEqual([
    expect.stringMatching(/^A1 The head of this sheet names the project "Another quay/),
  ]);
  expect(heads([null, "Feeder: pumps, south shed"])).toEqual([
    expect.stringMatching(/^B1 .* names the circuit "pumps, south shed", .* another panel/),
  ]);
  expect(
    heads(
      ["Project:", project.name.toUpperCase()],
      [`Feeder: ${panels[0]?.name}`],
      ["Feeder:", panels[0]?.designation ?? null],
    ),
  ).toEqual([]);
});
