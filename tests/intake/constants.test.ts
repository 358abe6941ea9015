import { describe, expect, test } from "vitest";
import { NO_CONSTANTS, readConstants, type SaidConstants } from "../../src/intake/constants";
import { openBook } from "../../src/intake/openBook";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { planFor } from "../../src/sheets/plan/plan";
import { english } from "../support/inWords";
import { sampleLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

const book = openBook(memoryBook(planFor(sampleLineup())).snapshot);

/** Where the readings of a file go, as record, place and value; invented. */
function placed(content: string, said: SaidConstants = {}) {
  const constants = readConstants(said, book);
  if (!constants.ok) throw new Error(constants.say(english));
  const intake = takeIn(
    book,
    [{ name: "set.csv", content }],
    { ...NO_ANSWERS, constants: constants.value },
    46_350,
  );
  if (!intake.ok) throw new Error(intake.reason(english));
  return intake.cells
    .filter(({ column }) => column === "reading" || column === "temperature" || column === "date")
    .map(({ table, row, column, value }) => {
      const { object, part, combination, pole, stage } = table.rows[row] ?? {};
      const place = [object, part, combination ?? pole, stage].filter((one) => one !== undefined);
      return `${table.kind.id} ${place.join(" ")} ${column}=${value}`;
    });
}

const reasonOf = (said: SaidConstants) => {
  const found = readConstants(said, book);
  return found.ok ? "taken" : found.say(english);
};

describe("what is said for all lines", () => {
  test("a stage that no line tells places both of them", () => {
    const file = "Section,Combination,R 1 min (MΩ)\nBus A,L1-E,52000\nBus A,L2-E,51000\n";
    const before = placed(file, { stage: "before" });
    expect(before.length).toBe(2);
    expect(before.every((cell) => / before reading=/.test(cell))).toBe(true);
    expect(
      placed(file, { stage: "after the withstand test" }).every((cell) => / after /.test(cell)),
    ).toBe(true);
    expect(placed(file)).toEqual([]);
  });

  test("a part and a panel that no line tells", () => {
    const file = "Pole,R (µΩ)\nL1,31\nL2,32\nL3,33\n";
    expect(placed(file, { panel: "=H01", part: "Breaker Q0", test: "contact" })).toEqual([
      "contact =H01 Breaker Q0 L1 reading=31",
      "contact =H01 Breaker Q0 L2 reading=32",
      "contact =H01 Breaker Q0 L3 reading=33",
    ]);
  });

  test("a line that says it itself says more", () => {
    const file = "Panel,Part,Pole,R (µΩ)\n=H01,,L1,31\n=H02,,L1,32\n,,L2,33\n";
    expect(placed(file, { panel: "=H03", part: "Breaker Q0" })).toEqual([
      "contact =H01 Breaker Q0 L1 reading=31",
      "contact =H02 Breaker Q0 L1 reading=32",
      "contact =H03 Breaker Q0 L2 reading=33",
    ]);
  });

  test("a day and a temperature reach every line", () => {
    const file = "Section,Combination,Stage,R 1 min (MΩ)\nBus A,L1-E,before,52000\n";
    expect(placed(file, { date: "2026-11-05", temperature: "68 °F" })).toEqual(
      expect.arrayContaining([
        expect.stringContaining("date=46331"),
        expect.stringContaining("temperature=20"),
      ]),
    );
  });

  test("nothing said changes nothing", () => {
    const file = "Panel,Part,Pole,R (µΩ)\n=H01,Breaker Q0,L1,31\n";
    expect(placed(file)).toEqual(["contact =H01 Breaker Q0 L1 reading=31"]);
    expect(readConstants({}, book)).toMatchObject({ ok: true, value: NO_CONSTANTS });
  });
});

test.each<[SaidConstants, RegExp]>([
  [{ colour: "red" }, /^"colour" cannot be set for all lines; use test, panel, part/],
  [{ reading: "31" }, /^reading \(reading\) is read line by line/],
  [{ stage: "" }, /^stage is blank; say what holds for all lines/],
  [{ stage: "during" }, /^stage: "during" is no stage; say before or after\./],
  [{ panel: "=H99" }, /^panel: no record here is of "=H99"; there are .*=H01/],
  [{ part: "Tap changer" }, /^part: no record here is of "Tap changer"; there are .*Breaker Q0/],
  [{ position: "L9" }, /^position: no record here is of "L9"; there are .*L1-E/],
  [
    { test: "oil sample" },
    /^test: "oil sample" is no record of this workbook; there are .*Contacts/,
  ],
  [{ date: "soon" }, /^date: .*soon/],
  [{ temperature: "warm" }, /^temperature: .*"warm"/],
])("%o is refused in words", (said, words) => {
  expect(reasonOf(said)).toMatch(words);
});

test.each(["insulation", "Insulation", "Insulation resistance, main circuit", "IR test"])(
  "%s is a test of this workbook",
  (name) => {
    expect(readConstants({ test: name }, book)).toMatchObject({
      ok: true,
      value: { kind: "insulation" },
    });
  },
);
