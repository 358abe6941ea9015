import { describe, expect, test } from "vitest";
import type { ExportOptions } from "../../src/intake/table/exportOptions";
import { readExport } from "../../src/intake/table/readExport";
import { english, inWords } from "../support/inWords";

const read = (lines: readonly string[], options: Partial<ExportOptions> = {}) => {
  const result = readExport(lines.join("\n"), { name: "export.csv", ...options });
  if (!result.ok) throw new Error(result.say(english));
  return result.value;
};
/** Each row with what its columns are, by field. */
const told = (lines: readonly string[], options: Partial<ExportOptions> = {}) =>
  Array.from(read(lines, options).each(), ({ block, row }) =>
    [
      row.line,
      ...block.columns
        .filter(({ field }) => field !== undefined)
        .map(
          ({ field, index, unit }) => `${field}=${row.cells[index] ?? ""}${unit ? ` ${unit}` : ""}`,
        ),
    ].join(" "),
  );

describe("wide tables: a column for each phase, pole or combination", () => {
  const WIDE = [
    "2 object==H01 position=L1-E resistance=5.2 GΩ",
    "2 object==H01 position=L2-E resistance=6 GΩ",
    "3 object==H02 position=L2-E resistance=7.5 GΩ",
  ];
  test.each([
    ["Panel;R L1-E (GΩ);R L2-E (GΩ)", WIDE],
    ["Panel;L1-E R [GΩ];L2-E R [GΩ]", WIDE],
    ["Panel;Resistance L1-E / GΩ;Resistance L2-E / GΩ", WIDE],
  ])("%s", (titles, rows) => {
    expect(told([titles, "=H01;5.2;6", "=H02;;7.5"])).toEqual(rows.map((row) => row));
  });

  test("phases alone, with the unit in a row under them, or in a line above them", () => {
    const rows = [
      "3 object==H01 part=Q0 position=L1 reading=31 µΩ",
      "3 object==H01 part=Q0 position=L2 reading=32 µΩ",
      "3 object==H01 part=Q0 position=L3 reading=33 µΩ",
    ];
    expect(told(["Panel;Part;L1;L2;L3", ";;µΩ;µΩ;µΩ", "=H01;Q0;31;32;33"])).toEqual(rows);
    expect(told(["Panel;Part;Resistance (µΩ);;", ";;L1;L2;L3", "=H01;Q0;31;32;33"])).toEqual(
      rows.map((row) => row.replace("reading", "resistance")),
    );
    expect(told(["Panel;Part;Resistance (µΩ);;", ";;1;2;3", "=H01;Q0;31;32;33"])).toEqual(
      rows.map((row) => row.replace("reading", "resistance").replace("=L", "=")),
    );
    expect(told(["Panel;Part;R;Y;B", ";;µΩ;µΩ;µΩ", "=H01;Q0;31;32;33"])[2]).toBe(
      "3 object==H01 part=Q0 position=B reading=33 µΩ",
    );
  });

  test("two lines of titles, the phase above and the time below", () => {
    expect(
      told([
        "Panel;Stage;L1-E;;L2-E;;Date",
        ";;30 s (GΩ);1 min (GΩ);30 s (GΩ);1 min (GΩ);",
        "=H01;before;1;2;3;4;2026-11-03",
      ]),
    ).toEqual([
      "3 object==H01 stage=before date=2026-11-03 position=L1-E r30s=1 GΩ resistance=2 GΩ",
      "3 object==H01 stage=before date=2026-11-03 position=L2-E r30s=3 GΩ resistance=4 GΩ",
    ]);
  });

  test("a column for each stage", () => {
    expect(told(["Panel;Combination;R before (GΩ);R after (GΩ)", "=H01;L1-E;5;6"])).toEqual([
      "2 object==H01 position=L1-E stage=before resistance=5 GΩ",
      "2 object==H01 position=L1-E stage=after resistance=6 GΩ",
    ]);
  });

  test("the times of a breaker's poles lie across its record too", () => {
    expect(told(["Panel;Part;L1 (ms);L2 (ms);L3 (ms)", "=H01;Q0 closing;55;56;57"])).toEqual([
      "2 object==H01 part=Q0 closing l1=55 ms l2=56 ms l3=57 ms",
    ]);
  });

  test("told to be long, the phases are titles like others", () => {
    expect(
      read(["Panel;Stage;R L1-E (GΩ)", "=H01;before;5"], { shape: "long" }).columns[2],
    ).toEqual({ index: 2, title: "R L1-E (GΩ)", field: "resistance", unit: "GΩ" });
  });
});

describe("several tests in one file", () => {
  const FILE = [
    "Date;2026-11-03",
    "Tested by;Crew 1",
    "",
    "Test: Insulation",
    "Stage: before",
    "Panel;Combination;R (GΩ)",
    "=H01;L1-E;5",
    "Average;;5",
    "",
    "Test: Contact resistance",
    "Panel;Part;Pole;R (µΩ)",
    "=H01;Q0;L1;31",
    "# checked",
    "Panel;Part;Pole;R (µΩ)",
    "=H01;Q0;L2;32",
    "Note: cleaned before",
    "=H01;Q0;L3;33",
    "Max;;;33",
  ];
  test("each has its own facts and titles; facts of the whole file hold for all", () => {
    const { blocks, inspection } = read(FILE);
    expect(blocks.map(({ line, header }) => [line, header])).toEqual([
      [6, { Date: "2026-11-03", "Tested by": "Crew 1", Test: "Insulation", Stage: "before" }],
      [11, { Date: "2026-11-03", "Tested by": "Crew 1", Test: "Contact resistance" }],
    ]);
    expect(told(FILE).map((row) => row.split(" ")[0])).toEqual(["7", "12", "15", "17"]);
    expect(inWords(inspection.skipped)).toEqual([
      { line: 8, reason: "Average of readings, none itself" },
      { line: 13, reason: "a note: # checked" },
      { line: 14, reason: "the titles again" },
      { line: 16, reason: "a note: Note: cleaned before" },
      { line: 18, reason: "Max of readings, none itself" },
    ]);
  });

  test("a panel named between rows holds for those below it", () => {
    const { blocks } = read([
      "Panel: =H01",
      "Part;Pole;R (µΩ)",
      "Q0;L1;31",
      "Panel: =H02",
      "Q0;L1;32",
      "Panel =H03",
      "Q0;L1;33",
    ]);
    expect(blocks.map(({ header }) => header.Panel)).toEqual(["=H01", "=H02", "=H03"]);
  });

  test("under a heading that is not understood, the panel from above holds no longer", () => {
    const { blocks } = read([
      "Panel: =H01",
      "Part;Pole;R (µΩ)",
      "Q0;L1;31",
      "the one beside it",
      "Q0;L1;32",
    ]);
    expect(blocks.map(({ header }) => header.Panel)).toEqual(["=H01", undefined]);
  });

  test("a skipped line is taken where the user says so", () => {
    const file = ["Panel;Part;Pole;R (µΩ)", "Max;Q0;L1;31"];
    expect(told(file)).toEqual([]);
    expect(told(file, { keep: [2] })).toHaveLength(1);
  });
});

describe("titles in other languages", () => {
  test.each([
    ["Feld;Pol;Widerstand (µΩ);Prüfdatum", ["object", "position", "resistance", "date"]],
    ["Cellule;Pôle;Résistance (µΩ);Opérateur", ["object", "position", "resistance", "by"]],
    ["Celda;Fase;Resistencia (µΩ);Fecha", ["object", "position", "resistance", "date"]],
  ])("%s", (titles, fields) => {
    expect(read([titles, "=H01;L1;31;"]).columns.map(({ field }) => field)).toEqual(fields);
  });
  test("the user's own words come before these", () => {
    expect(
      read(["Skap;Pol;Widerstand (µΩ)", "=H01;L1;31"], { synonyms: { object: ["Skap"] } })
        .columns[0]?.field,
    ).toBe("object");
  });
});

describe("what was found is said, and can be corrected", () => {
  test("delimiter, decimal mark, order of dates, titles, units, shape, columns", () => {
    const { inspection } = read([
      "Panel;Pole;R;Date;Colour",
      ";;µΩ;;",
      "=H01;L1;31,5;03/11/2026;red",
      "=H01;L2;31,7;25/11/2026;red",
    ]);
    expect(inWords(inspection.delimiter)).toEqual({
      value: ";",
      evidence: "semicolon, by which 4 columns are recognised",
      confidence: "certain",
    });
    expect(inspection.decimal).toMatchObject({ value: ",", confidence: "certain" });
    expect(inWords(inspection.dateOrder)).toMatchObject({
      value: "day-first",
      evidence: 'day first, because "25/11/2026" on line 4 can be read no other way',
    });
    expect(inWords(inspection.blocks)).toMatchObject([
      {
        lines: 2,
        titles: { value: 1 },
        titleLines: { value: 1 },
        units: { value: true },
        shape: { value: "long" },
        columns: [
          { title: "Panel", field: { value: "object", confidence: "certain" } },
          { field: { value: "position" } },
          { field: { value: "resistance" }, unit: "µΩ" },
          { field: { value: "date" } },
          { title: "Colour", field: { value: undefined, confidence: "open" } },
        ],
      },
    ]);
  });

  test("what stays open says so", () => {
    const { inspection } = read(["Panel;Pole;R (µΩ);Date", "=H01;L1;31,250;03/11/2026"]);
    expect(inspection.decimal).toMatchObject({ value: undefined, confidence: "open" });
    expect(inWords(inspection.dateOrder)).toMatchObject({ value: undefined, confidence: "open" });
  });

  test("corrections count alone", () => {
    const lines = ["x,y", "a b c", "Where|Which|X (µΩ)|Panel|03/04/2026", "=H01|L1|31,250|z|"];
    const { columns, inspection, rows } = read(lines, {
      delimiter: "|",
      titles: 3,
      titleLines: 1,
      units: false,
      decimal: ",",
      dateOrder: "month-first",
      mapping: { Where: "object", X: "left out", "X (µΩ)": "resistance of L2", Panel: "left out" },
    });
    expect(columns.map(({ title, field }) => [title, field])).toEqual([
      ["Where", "object"],
      ["Which", undefined],
      ["Panel", undefined],
      ["03/04/2026", undefined],
      ["position", "position"],
      ["X (µΩ)", "resistance"],
    ]);
    expect(rows[0]?.cells).toEqual(["=H01", "L1", "z", "", "L2", "31,250"]);
    expect(inWords(inspection.decimal.evidence)).toBe("decimal comma, as you set it");
    expect(inspection.dateOrder.evidence(english)).toBe("month first, as you set it");
    expect(inspection.delimiter.evidence(english)).toBe("vertical bar, as you set it");
  });
});
