import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readExport } from "../../../src/intake/table/readExport";
import { english, inWords } from "../../support/inWords";

const read = (text: string, options = {}) => {
  const result = readExport(text, { name: "export.csv", ...options });
  if (!result.ok) throw new Error(result.say(english));
  return result.value;
};
const reasonOf = (text: string, options = {}) => {
  const result = readExport(text, { name: "export.csv", ...options });
  return result.ok ? "read" : result.say(english);
};

describe("the three shapes", () => {
  test("comma, with a block of facts above the table", () => {
    const table = read(
      [
        "# Invented data",
        "Stage,before withstand",
        "Insulation temperature,21.4 °C",
        "Instrument: tester 1",
        "",
        "Panel,Combination,R 1 min (GΩ),Test voltage (V DC),Remarks",
        '=H01,L1-E,52.5,5000,"dry, clean"',
        "=H01,L2-E,61,5000,",
      ].join("\r\n"),
    );
    expect(table.delimiter).toBe(",");
    expect(table.header).toEqual({
      "Invented data": "",
      Stage: "before withstand",
      "Insulation temperature": "21.4 °C",
      Instrument: "tester 1",
    });
    expect(table.columns.map(({ field, unit }) => [field, unit])).toEqual([
      ["object", undefined],
      ["position", undefined],
      ["resistance", "GΩ"],
      ["voltage", "V"],
      ["remarks", undefined],
    ]);
    expect(table.rows).toEqual([
      { line: 7, cells: ["=H01", "L1-E", "52.5", "5000", "dry, clean"] },
      { line: 8, cells: ["=H01", "L2-E", "61", "5000", ""] },
    ]);
    expect(inWords(table.decimal)).toEqual({
      mark: ".",
      isOpen: false,
      evidence: 'decimal point, because "21.4 °C" on line 3 can be read no other way',
    });
  });

  test("semicolon, with decimal comma and a row of units", () => {
    const table = read(
      "Panel;Pole;Resistance;Current;Temperature\n;;[µΩ];[A];[°C]\nH01;1;31,250;200;18,5\n",
    );
    expect(table.delimiter).toBe(";");
    expect(table.columns.map(({ field, unit }) => [field, unit])).toEqual([
      ["object", undefined],
      ["position", undefined],
      ["resistance", "µΩ"],
      ["current", "A"],
      ["temperature", "°C"],
    ]);
    expect(table.rows).toEqual([{ line: 3, cells: ["H01", "1", "31,250", "200", "18,5"] }]);
    expect(inWords(table.decimal)).toEqual({
      mark: ",",
      isOpen: false,
      evidence: 'decimal comma, because "18,5" on line 3 can be read no other way',
    });
  });

  test("tabs, with units in the cells, over-range marks and a comment at the foot", () => {
    const table = read(
      "\ufeffPanel\tPhases\tReading\tDuration\n=H01\tR-E\tOL > 2 TΩ\t1 min\n=H01\tY-E\t61.2 GΩ\t1 min\n# end\n",
    );
    expect(table.delimiter).toBe("\t");
    expect(table.columns.map(({ field }) => field)).toEqual([
      "object",
      "position",
      "reading",
      "duration",
    ]);
    expect(table.rows.map(({ line }) => line)).toEqual([2, 3]);
    expect(table.decimal.mark).toBe(".");
  });
});

describe("titles and units", () => {
  test.each([
    ["Insulation resistance [GΩ]", "resistance", "GΩ"],
    ["R (MΩ)", "resistance", "MΩ"],
    ["R/MΩ", "resistance", "MΩ"],
    ["R [GΩ]", "resistance", "GΩ"],
    ["r in Gohm", "resistance", "GΩ"],
    ["Insulation Resistance, GOhm", "resistance", "GΩ"],
    ["R 1 min MΩ", "reading", "MΩ"],
    ["R 1 min", "resistance", undefined],
    ["R 30 s (GΩ)", "r30s", "GΩ"],
    ["Temp_C", "temperature", "°C"],
    ["Temp (°C)", "temperature", "°C"],
    ["RH %", "humidity", "%"],
    ["Time (s)", "duration", "s"],
    ["Time", "time", undefined],
    ["S/N", "serial", undefined],
    ["Applied voltage (kV r.m.s.)", "voltage", "kV"],
    ["Resistance (kV)", undefined, undefined],
    ["Colour", undefined, undefined],
  ])("%s", (title, field, unit) => {
    const { columns } = read(
      `Panel,Pole,${title.includes(",") ? `"${title}"` : title}\n=H01,1,2\n`,
    );
    expect(columns[2]).toEqual({ index: 2, title, field, unit });
  });

  test("a mapping names what a title does not", () => {
    const { columns } = read("Where;Which;Ergebnis (µΩ)\nH01;1;31,5\n", {
      mapping: { where: "object", Which: "position", "Ergebnis (µΩ)": "resistance" },
    });
    expect(columns.map(({ field, unit }) => [field, unit])).toEqual([
      ["object", undefined],
      ["position", undefined],
      ["resistance", "µΩ"],
    ]);
    expect(reasonOf("A,B\n1,2", { mapping: { A: "colour" } })).toMatch(
      /^Unknown field "colour"; use one of object/,
    );
  });
});

test("the least table", () => {
  const table = read("Panel;Pole;R (µΩ)\n=H01;L1;31,5", { name: "crm.csv" });
  expect([table.name, table.delimiter, table.decimal.mark]).toEqual(["crm.csv", ";", ","]);
  expect(table.columns).toHaveLength(3);
});

test("lines are counted in the file, also past cells that span several", () => {
  const { rows } = read('Panel,Pole,Remarks\n=H01,1,"two\r\nlines"\n\n=H02,1,x\n');
  expect(rows.map(({ line }) => line)).toEqual([2, 5]);
});

test("the user's own word on the decimal mark comes first", () => {
  expect(inWords(read("Panel;Pole;R (µΩ)\nH01;1;31,250\n").decimal)).toEqual({
    mark: undefined,
    isOpen: true,
    evidence:
      'decimal mark unknown, because "31,250" on line 2 could be read either way and nothing else settles it',
  });
  expect(inWords(read("Panel;Pole;R (µΩ)\nH01;1;31,250\n", { decimal: "," }).decimal)).toEqual({
    mark: ",",
    isOpen: false,
    evidence: "decimal comma, as you set it",
  });
});

describe("refused, with what would be right", () => {
  test.each([
    ["", /"export.csv" is empty; an export has a row of titles/],
    [
      "Colour,Weight\nred,12\n",
      /has no row of titles .* found are "Colour", "Weight"; use titles such as panel \(object\)/,
    ],
    ["nothing of the kind", /The titles found are "nothing of the kind"/],
    ["Panel,Pole\n\0,1", /NUL character on line 2\. Export it as CSV/],
    ["Panel,R (\ufffd\ufffd)\n=H01,5", /line 1 that is not UTF-8/],
    [
      "Panel,Pole,Value,Reading\n=H01,1,2,3",
      /"Value" and "Reading" both read as reading; say by a mapping/,
    ],
  ])("%j", (text, reason) => {
    expect(reasonOf(text)).toMatch(reason);
  });

  test("whatever the text is, it is read or refused with one plain line, never an exception", () => {
    const piece = fc.oneof(
      fc.constantFrom(
        "Panel",
        "Pole",
        "R (MΩ)",
        ",",
        ";",
        "\t",
        "\n",
        '"',
        "=H01",
        "1,5",
        "#",
        "__proto__",
        ":",
      ),
      fc.string({ unit: "binary", maxLength: 8 }),
    );
    fc.assert(
      fc.property(fc.array(piece, { maxLength: 60 }), (pieces) => {
        const result = readExport(pieces.join(""), { name: "hostile.csv" });
        if (!result.ok) expect(result.say(english)).toMatch(/^[^\p{Cc}]+\.$/u);
      }),
      { numRuns: 300 },
    );
    expect(reasonOf("x".repeat(3_000_000))).toMatch(/no row of titles/);
    expect(reasonOf(`"${"x,".repeat(1_000_000)}`)).toMatch(/no row of titles/);
    expect(read(`Panel,Pole,R (MΩ)\n=H01,1,${"9".repeat(2_000_000)}\n`).rows).toHaveLength(1);
  });
});
