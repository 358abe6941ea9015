import fc from "fast-check";
import { afterEach, describe, expect, it } from "vitest";
import { functions } from "../../src/functions/catalogue";

const call = (name: string, ...args: unknown[]) => functions[name]?.(...(args as never[]));

describe("single cells and ranges", () => {
  it("gives a cell for cells and a range for ranges", () => {
    expect(call("IRCORRECT", 1200, 35, "oil")).toBe(3360);
    expect(call("IRCORRECT", [[1200]], [[35]], "oil")).toEqual([[3360]]);
  });

  it("lets a single cell stand beside a range, and a row beside a column", () => {
    expect(call("IRCORRECT", [[100], [200]], 35, "oil")).toEqual([[280], [560]]);
    expect(call("EARTHRESISTANCE", [[10, 20]], [[1], [2]])).toEqual([
      [100, 50],
      [200, 100],
    ]);
  });

  it("refuses ranges of unlike shape, and says which", () => {
    expect(call("EARTHRESISTANCE", [[1], [2], [3]], [[1], [2]])).toEqual([
      [{ code: "#VALUE!", message: "Ranges must be of one shape: 3 by 1, 2 by 1." }],
    ]);
  });

  it("gives blanks for blanks and holes, never zero", () => {
    expect(call("IRCORRECT", "", 35)).toBe("");
    expect(call("IRCORRECT", null, 35)).toBe("");
    expect(call("IRCORRECT", [[100], [null], [""], []], 20)).toEqual([[100], [""], [""], [""]]);
    expect(call("SPREAD", [["", null]])).toBe("");
    expect(call("KNEEPOINT", [], [])).toBe("");
  });

  it("takes a blank optional argument for one left out", () => {
    expect(call("IRFACTOR", 35, null, "")).toBe(call("IRFACTOR", 35));
    expect(call("WITHSTAND", 12, "", null, undefined, "")).toBe(22.4);
  });

  it("hands errors on, as text, as an object, or inside a richer cell", () => {
    expect(call("IRCORRECT", "#N/A", 35)).toEqual({ code: "#N/A" });
    expect(call("IRCORRECT", 100, { code: "#DIV/0!" })).toEqual({ code: "#DIV/0!" });
    expect(call("IRCORRECT", { type: "Error", basicValue: "#REF!" }, 35)).toEqual({
      code: "#REF!",
    });
    expect(call("JUDGE", "#VALUE!", 5)).toEqual({ code: "#VALUE!" });
    expect(call("SPREAD", [[1, "#NUM!", 3]])).toEqual({ code: "#NUM!" });
  });

  it("reads the number inside a richer cell", () => {
    expect(call("IRCORRECT", { type: "FormattedNumber", basicValue: 1200 }, 35, "oil")).toBe(3360);
  });
});

describe("errors in the host", () => {
  class HostError {
    constructor(
      readonly code: string,
      readonly message?: string,
    ) {}
  }
  afterEach(() => {
    Reflect.deleteProperty(globalThis, "CustomFunctions");
  });

  it("are the host's own, of the right kind, with a sentence", () => {
    Object.assign(globalThis, { CustomFunctions: { Error: HostError } });
    const [wrong, range, none, passed] = [
      call("DEWPOINT", "warm", 50),
      call("DEWPOINT", 20, 101),
      call("IRMINIMUM", 12, "IEC"),
      call("DEWPOINT", "#DIV/0!", 50),
    ];
    for (const error of [wrong, range, none, passed]) expect(error).toBeInstanceOf(HostError);
    expect(wrong).toMatchObject({ code: "#VALUE!" });
    expect(range).toMatchObject({ code: "#NUM!", message: expect.stringContaining("101") });
    expect(none).toMatchObject({ code: "#N/A", message: expect.stringContaining("project") });
    expect(passed).toMatchObject({ code: "#DIV/0!" });
  });
});

describe("readings as written", () => {
  it("are read in the argument's unit", () => {
    expect(call("IRCORRECT", "5.2 GΩ", 20)).toBe(5200);
    expect(call("MEGOHMS", "5.2 GΩ")).toBe(5200);
    expect(call("MEGOHMS", "800 kOhm")).toBe(0.8);
    expect(call("MEGOHMS", 5.2, "GΩ")).toBe(5200);
    expect(call("MEGOHMS", "5.2", "GΩ")).toBe(5200);
    expect(call("MEGOHMS", "900 MΩ", "GΩ")).toBe(900);
    expect(call("CONTACTCORRECT", "0.045 mΩ", "20 °C")).toBe(45);
    expect(call("GASPRESSURE", "6.5 bar", 20)).toBeCloseTo(0.65, 9);
    expect(call("RATIOERROR", 400, 4.98, "400/5")).toBeCloseTo(-0.4, 9);
  });

  it("keep their bound: it never becomes a number", () => {
    expect(call("IRCORRECT", "> 2 TΩ", 30, "solid")).toBe("> 3160000");
    expect(call("IRCORRECT", "< 0.5 MΩ", 20)).toBe("< 0.5");
    expect(call("MEGOHMS", "> 2 TΩ")).toMatchObject({ code: "#VALUE!" });
    expect(call("CONTACTCORRECT", "< 0.1 mΩ", 30)).toBe("< 96.2193");
    expect(call("CONTACTCORRECT", "> 0.1 mΩ", 30)).toBe("> 96.2192");
  });

  it("are judged as bounds", () => {
    expect(call("JUDGE", call("IRCORRECT", "> 2 TΩ", 30), 5000)).toBe("Pass");
    expect(call("JUDGE", call("IRCORRECT", "> 2 GΩ", 20), 5000)).toBe("Inconclusive");
    expect(call("JUDGE", "< 2000", 5000, "least")).toBe("Fail");
    expect(call("JUDGE", "> 1.125", 1)).toBe("Pass");
    expect(call("JUDGE", "OL", 5000)).toMatchObject({ code: "#VALUE!" });
  });
});

describe("JUDGE", () => {
  it("takes the sense in the words of the trade", () => {
    for (const [word, low, high] of [
      ["min", "Fail", "Pass"],
      ["At least", "Fail", "Pass"],
      ["max", "Pass", "Fail"],
      ["at most", "Pass", "Fail"],
    ] as const)
      expect([call("JUDGE", 4, 5, word), call("JUDGE", 6, 5, word)]).toEqual([low, high]);
    expect(call("JUDGE", 4, 5, "about")).toMatchObject({ code: "#VALUE!" });
  });

  it("takes a limit as it is written, where no sense is given", () => {
    // 2 TΩ is 2,000 GΩ; 5 GΩ is 5,000 MΩ.
    expect(call("JUDGE", "> 2 TΩ", "at least 5 GΩ")).toBe("Pass");
    expect(call("JUDGE", "> 2 GΩ", "min. 5 GΩ")).toBe("Inconclusive");
    expect(call("JUDGE", 5200, "at least 5 GΩ", "", 0, "MΩ")).toBe("Pass");
    expect(call("JUDGE", "52 µΩ", "max 50 µΩ")).toBe("Fail");
    expect(call("JUDGE", "52 µΩ", "max 50 µΩ", "", 0.05)).toBe("Pass");
    expect(call("JUDGE", 40, "≤ 50")).toBe("Pass");
    expect(call("JUDGE", 5000, "5000")).toBe("Pass");
    expect(call("JUDGE", "", "at least 5 GΩ")).toBe("Missing");
    expect(call("JUDGE", 5, "some")).toMatchObject({ code: "#VALUE!" });
    // A sense that is given takes a number alone, as the formulas of a workbook do.
    expect(call("JUDGE", 5, "max 50", "least")).toMatchObject({ code: "#VALUE!" });
  });

  it("lets a strict limit itself not pass", () => {
    expect(call("JUDGE", 5, "> 5")).toBe("Fail");
    expect(call("JUDGE", 5, "≥ 5")).toBe("Pass");
    expect(call("JUDGE", "> 5", "> 5")).toBe("Pass");
    expect(call("JUDGE", 5, "< 5")).toBe("Fail");
  });

  it("tells a missing value from a missing limit", () => {
    expect(call("JUDGE", "", 5)).toBe("Missing");
    expect(call("JUDGE", 5, "")).toBe("Inconclusive");
    expect(call("JUDGE", [[5], [null], [4]], 5)).toEqual([["Pass"], ["Missing"], ["Fail"]]);
    expect(call("JUDGE", 0.4, 0.5, "within")).toBe("Pass");
    expect(call("JUDGE", 104, 100, "most", 0.05)).toBe("Pass");
  });
});

describe("values through the worksheet", () => {
  // Each value has its published check in tests/engineering or tests/standards.
  it.each<[string, unknown[], unknown]>([
    ["IRMINIMUM", [12, "NETA"], 5000],
    ["IRTESTVOLTAGE", [12, "neta"], 2500],
    ["ABSORPTION", [1000, 1400], 1.4],
    ["POLARIZATION", [1000, 2400], 2.4],
    ["WITHSTAND", [12], 22.4],
    ["WITHSTAND", [15, "NETA", "site", "DC", "main"], 37.5],
    ["SPREAD", [[[50, "", 60, 76]]], 0.52],
    ["CTLIMIT", [0.5, 20], 0.75],
    ["CTLIMIT", ["5P20", 100, "composite"], 5],
    ["VTLIMIT", ["3p", 100, "phase"], 120],
    ["CABLETEST", [15, "NETA"], 21],
    ["CABLETEST", [12, "IEC", "DC"], 24],
    ["COILLIMIT", [110, "opening", "least"], 77],
    ["BURDEN", [15, 5], 0.6],
    ["ALTITUDEFACTOR", [800], 1],
    ["TIMESPREAD", [[[30], [31]]], 1],
  ])("%s(%j) is %j", (name, args, expected) => {
    expect(call(name, ...args)).toEqual(expected);
  });

  it("says why a polarization index is not meaningful", () => {
    expect(call("POLARIZATION", 20_000, 150_000)).toContain("not meaningful");
  });

  it("says that a ratio of bounds is not meaningful", () => {
    expect(call("ABSORPTION", "> 2 TΩ", "> 2 TΩ")).toContain("not meaningful");
    expect(call("POLARIZATION", 1000, "> 2 GΩ")).toContain("not meaningful");
    expect(call("ABSORPTION", "> 2 TΩ", -1)).toMatchObject({ code: "#NUM!" });
  });

  it("asks for every point of an excitation curve", () => {
    expect(call("KNEEPOINT", [[10], [20], [30]], [[1], [""], [3]])).toMatchObject({
      code: "#VALUE!",
      message: "Currents, cell 2: nothing stands here; every point needs one.",
    });
    const volts = Array.from({ length: 21 }, (_, i) => 10 + 10 * i);
    const amps = volts.map((v) => 1e-3 * v ** 0.7 + 1e-3 * 150 ** -13.3 * v ** 14);
    expect(call("KNEEPOINT", [volts], [amps], "ieee 45°")).toBeGreaterThan(100);
    expect(call("KNEEPOINT", [volts], [amps], "my own")).toMatchObject({ code: "#VALUE!" });
  });

  it.each([
    ["CABLETEST", [12, "PROJECT"]],
    ["COILLIMIT", [110, "closing", "least", "DC", "project"]],
    ["IRMINIMUM", [12, "PROJECT"]],
    ["IRTESTVOLTAGE", [12, "Project"]],
    ["SOURCE", ["IRMINIMUM", "PROJECT"]],
    ["WITHSTAND", [12, "PROJECT"]],
  ])("leaves project criteria to the workbook's sheet: %s", (name, args) => {
    expect(call(name, ...args)).toMatchObject({
      code: "#N/A",
      message: expect.stringContaining("sheet Criteria"),
    });
  });
});

describe("SOURCE", () => {
  it("answers for every function, with certainty", () => {
    for (const name of Object.keys(functions)) {
      expect(call("SOURCE", name)).toMatch(/\((?:read|quoted|from memory|memory|practice)/);
      for (const basis of ["IEC", "NETA"]) expect(call("SOURCE", name, basis)).toMatch(/\(/);
    }
  });

  it("names document, edition and table", () => {
    expect(call("SOURCE", "irminimum", "NETA")).toBe(
      "NETA: ANSI/NETA ATS-2025, table 100.1 (read: a published copy)",
    );
    expect(call("SOURCE", "GEAR.IRFACTOR")).toContain("table 100.14");
  });

  it("lists the functions where there is none of that name", () => {
    expect(call("SOURCE", "CONSTRUCTOR")).toMatchObject({ code: "#N/A" });
  });
});

describe("bad input", () => {
  it.each<[string, unknown[], string, string]>([
    ["IRCORRECT", [-5, 20], "#NUM!", "Insulation resistance must be 0 MΩ or more; -5 is not."],
    [
      "IRCORRECT",
      [100, 120],
      "#NUM!",
      "Insulation temperature must be from -10 to 105 °C; 120 is outside.",
    ],
    [
      "IRCORRECT",
      [100, 20, "paper"],
      "#VALUE!",
      'Method: "paper" is not one of solid, oil, halving, none.',
    ],
    ["IRMINIMUM", [0, "NETA"], "#NUM!", "Rated voltage must be above 0 kV; 0 is not."],
    ["WITHSTAND", [-12], "#NUM!", "Rated voltage must be above 0 kV; -12 is not."],
    [
      "WITHSTAND",
      [100],
      "#N/A",
      "IEC 62271-1:2017, rated insulation levels, series I has no row for 100 kV (nearest: 72.5 kV), and a test voltage is never taken from another row. Give the plate's level or a project criterion.",
    ],
    ["RATIOERROR", [100, 1, 0], "#NUM!", "Rated ratio must be above 0; 0 is not."],
    [
      "RATIOERROR",
      [100, 1, "400/0"],
      "#VALUE!",
      'Rated ratio: "400/0" is not a ratio; write one such as "400/5" or 80.',
    ],
    ["ABSORPTION", [0, 5], "#NUM!", "Resistance after 30 s must be above 0 MΩ; 0 is not."],
    ["DEWPOINT", [20, 101], "#NUM!", "Relative humidity must be from 0 to 100 %; 101 is outside."],
    [
      "CURVETIME",
      ["IEC very", 1, 1],
      "#NUM!",
      "Multiple of pick-up must be above 1 and at most 20; 1 is outside. An element does not operate at or below its pick-up.",
    ],
    [
      "CTLIMIT",
      ["0.7", 100],
      "#VALUE!",
      "Accuracy class must be one of 0.1, 0.15, 0.15S, 0.2, 0.2S, 0.3, 0.5, 0.5S, 0.6, 1, 1.2, 3, 5, 5P, 5PR, 10P, 10PR, PX, PXR, TPS, TPX, TPY, TPZ, C, K, T.",
    ],
    [
      "CURVETIME",
      ["IEC very", "fast", 1],
      "#VALUE!",
      'Multiple of pick-up: "fast" is not a number; write one such as 1.5.',
    ],
    [
      "EARTHRESISTANCE",
      [true, 1],
      "#VALUE!",
      'Test current: "true" is no quantity; a number in A belongs here.',
    ],
    [
      "DEWPOINT",
      ["> 20 °C", 50],
      "#VALUE!",
      'Air temperature: "> 20 °C" is only a bound; a number in °C belongs here.',
    ],
    ["SPREAD", [[[5]]], "#N/A", "A spread needs at least two values, such as those of two poles."],
  ])("%s(%j): %s", (name, args, code, message) => {
    expect(call(name, ...args)).toEqual({ code, message });
  });
});

describe("whatever stands in the cells", () => {
  const cell = fc.oneof(
    fc.double(),
    fc.integer({ min: -10, max: 150 }),
    fc.string(),
    fc.boolean(),
    fc.constantFrom(
      null,
      undefined,
      "",
      "#N/A",
      "> 2 TΩ",
      "1,250",
      "IEC",
      "NETA",
      "oil",
      "DC",
      "M12",
      "8.8",
      "0.5",
      "IEC very",
      "gauge",
      "within",
      { code: "#REF!" },
      { basicValue: 5 },
      {},
      Number.MAX_VALUE,
      Number.MIN_VALUE,
      "constructor",
      "__proto__",
    ),
  );
  const range = fc.array(fc.array(cell, { maxLength: 4 }), { maxLength: 4 });
  const numbers = fc.array(
    fc.array(fc.double({ min: 0, max: 1e4 }), { minLength: 6, maxLength: 9 }),
    { maxLength: 2 },
  );

  const flat = (outcome: unknown): unknown[] =>
    Array.isArray(outcome) ? outcome.flatMap(flat) : [outcome];
  const shown = (one: unknown) =>
    typeof one === "string" ||
    (typeof one === "number" && Number.isFinite(one)) ||
    (typeof one === "object" && one !== null && "code" in one);

  it.each(Object.keys(functions))("%s gives cells, and no NaN or Infinity", (name) => {
    fc.assert(
      fc.property(fc.array(fc.oneof(cell, range, numbers), { maxLength: 7 }), (args) => {
        for (const one of flat(call(name, ...args))) expect(shown(one), String(one)).toBe(true);
      }),
      { numRuns: 300 },
    );
  });
});
