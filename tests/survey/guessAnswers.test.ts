import { expect, test } from "vitest";
import type { CellValue } from "../../src/records/kind";
import { guessAnswers } from "../../src/survey/guessAnswers";

const guess = (rows: readonly (readonly CellValue[])[]) =>
  guessAnswers({
    sheets: [
      {
        name: "Sheet1",
        tables: [],
        cells: {
          rowCount: rows.length,
          columnCount: Math.max(...rows.map(({ length }) => length)),
          cell: (row, column) => rows[row]?.[column] ?? null,
          formula: () => undefined,
        },
      },
    ],
  });

const said = (...rows: readonly (readonly CellValue[])[]) => {
  const { ratedkV, basis } = guess(rows);
  return [ratedkV?.value, basis?.value];
};

// Rated voltages: 12, 17.5, 24 and 36 kV of IEC 62271-1, series I; 4.76, 15, 27 and 38 kV of IEEE C37.20.2.
test.each<[string, readonly (readonly CellValue[])[], number | undefined, string | undefined]>([
  ["a heading", [["MAIN SUBSTATION - 15 KV METAL-CLAD - ACCEPTANCE"]], 15, "NETA"],
  ["a plate", [["Plate"], ["12 kV / 1250 A / 25 kA"]], 12, "IEC"],
  ["a label and a number", [["Rated voltage, kV", 17.5]], 17.5, "IEC"],
  ["a label and a quantity", [["Bemessungsspannung", "24 kV"]], 24, "IEC"],
  ["a decimal comma", [["Tension assignée", "17,5 kV"]], 17.5, "IEC"],
  ["words that say the basis", [["38 kV switchgear, tested to IEC 62271-200"]], 38, "IEC"],
  [
    "a test beside the rating",
    [["15 kV gear; site AC 27 kV one minute; IR 2.5 kV DC"]],
    15,
    "NETA",
  ],
  ["a test before the rating", [["Withstand 36 kV, 60 s"], ["Switchgear 17.5 kV"]], 17.5, "IEC"],
  ["only a test voltage", [["Insulation resistance, 5 kV DC, 1 min"]], undefined, undefined],
  ["only a withstand test", [["Power frequency withstand (80 % of 24 kV)"]], undefined, undefined],
  ["a label of a test", [["Test voltage, kV", 15]], undefined, undefined],
  ["two ratings alike", [["12 kV switchgear"], ["24 kV switchgear"]], undefined, undefined],
  ["beyond what the check knows", [["Line rated 110 kV"]], undefined, undefined],
  ["both bodies of standards alike", [["NETA ATS"], ["IEC 62271-1"]], undefined, undefined],
  ["a name that holds letters of one", [["PIECES OF ANSIBLE"]], undefined, undefined],
  ["nothing", [["Panel", "L1", "L2"]], undefined, undefined],
])("the rated voltage and basis of %s", (_name, rows, ratedkV, basis) => {
  expect(said(...rows)).toEqual([ratedkV, basis]);
});

test("a basis that no word says is told by the rated voltage, where only one has it", () => {
  expect(guess([["12 kV switchgear"]]).basis?.by).toBe("rated");
  expect(guess([["12 kV switchgear, IEC"]]).basis?.by).toBe("words");
});

test("a guess says where it comes from", () => {
  expect(guess([["Works"], [null, "Rated voltage, kV", 12]]).ratedkV).toEqual({
    value: 12,
    sheet: "Sheet1",
    address: "B2",
    text: "Rated voltage, kV 12",
  });
});
