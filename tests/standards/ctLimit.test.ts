import { describe, expect, it } from "vitest";
import { ctLimit } from "../../src/standards/ctLimit";
import { type CtClassName, ctClasses } from "../../src/standards/transformerClasses";
import { vtLimit } from "../../src/standards/vtLimit";
import { english } from "../support/inWords";

const figure = (found: ReturnType<typeof ctLimit>) => (found.ok ? found.value.value : found.kind);

describe("ctLimit", () => {
  // IEC 61869-2, ratio ±% and phase ±min (read in a published handbook and in an article), at 5, 20,
  // 100 and 120 %, classes with S at 1 % too.
  it.each<[CtClassName, number[], number[], number[]]>([
    ["0.1", [5, 20, 100, 120], [0.4, 0.2, 0.1, 0.1], [15, 8, 5, 5]],
    ["0.2", [5, 20, 100, 120], [0.75, 0.35, 0.2, 0.2], [30, 15, 10, 10]],
    ["0.5", [5, 20, 100, 120], [1.5, 0.75, 0.5, 0.5], [90, 45, 30, 30]],
    ["1", [5, 20, 100, 120], [3, 1.5, 1, 1], [180, 90, 60, 60]],
    ["0.2S", [1, 5, 20, 100, 120], [0.75, 0.35, 0.2, 0.2, 0.2], [30, 15, 10, 10, 10]],
    ["0.5S", [1, 5, 20, 100, 120], [1.5, 0.75, 0.5, 0.5, 0.5], [90, 45, 30, 30, 30]],
  ])("class %s", (name, percents, ratios, phases) => {
    for (const [i, percent] of percents.entries()) {
      expect(figure(ctLimit(name, percent))).toBe(ratios[i]);
      expect(figure(ctLimit(name, percent, "phase"))).toBe(phases[i]);
    }
  });

  it("lies on the straight line between two tabulated currents", () => {
    expect(figure(ctLimit("0.5", 12.5))).toBeCloseTo((1.5 + 0.75) / 2, 12);
    expect(figure(ctLimit("0.2", 60, "phase"))).toBeCloseTo(12.5, 12);
  });

  // IEC 61869-2 (read): 3 and 5 at 50 % and 120 %, phase not specified; 5P ±1 %, ±60 min, composite 5 %;
  // 10P ±3 %, composite 10 %.
  it.each<[CtClassName, number, "ratio" | "phase" | "composite", number | "none"]>([
    ["3", 50, "ratio", 3],
    ["5", 120, "ratio", 5],
    ["3", 49, "ratio", "none"],
    ["3", 100, "phase", "none"],
    ["5P", 100, "ratio", 1],
    ["5P", 100, "phase", 60],
    ["5P", 100, "composite", 5],
    ["10P", 100, "ratio", 3],
    ["10P", 100, "phase", "none"],
    ["10P", 100, "composite", 10],
    ["5P", 50, "ratio", "none"],
    ["0.5", 100, "composite", "none"],
    ["0.5", 4.9, "ratio", "none"],
    ["0.5", 121, "ratio", "none"],
    ["0.5", -5, "ratio", "none"],
  ])("class %s at %d %%, %s: %s", (name, percent, quantity, expected) => {
    expect(figure(ctLimit(name, percent, quantity))).toBe(expected);
  });

  it("is at full current the number in the class's name", () => {
    for (const name of Object.keys(ctClasses) as CtClassName[])
      if (/^\d[\d.]*S?$/.test(name))
        expect(figure(ctLimit(name, 100))).toBe(Number.parseFloat(name));
  });

  it("lists its classes where one does not exist", () => {
    const found = ctLimit("0.7" as "0.5", 100);
    expect(found).toMatchObject({ ok: false, kind: "wrong" });
    expect(!found.ok && found.say(english)).toContain("0.2S");
  });
});

describe("vtLimit", () => {
  // IEC 61869-3: 0.2, 0.5 and 1 (memory); 3P and 6P (read in a handbook citing IEC 60044-2).
  it.each([
    ["0.2", 100, 0.2, 10],
    ["0.5", 80, 0.5, 20],
    ["1", 120, 1, 40],
    ["3P", 5, 3, 120],
    ["6P", 190, 6, 240],
  ] as const)("class %s at %d %%: %d %%, %d min", (name, percent, ratio, phase) => {
    expect(figure(vtLimit(name, percent))).toBe(ratio);
    expect(figure(vtLimit(name, percent, "phase"))).toBe(phase);
  });

  it.each([
    ["0.5", 79],
    ["0.5", 121],
    ["3P", 1.9],
    ["3P", 191],
    ["0.3", 89],
    ["0.6", 111],
  ] as const)("class %s has no limit at %d %%", (name, percent) => {
    expect(figure(vtLimit(name, percent))).toBe("none");
  });

  it("knows its classes and tells how sure each is", () => {
    expect(vtLimit("5P" as "3P", 100)).toMatchObject({ kind: "wrong" });
    expect(vtLimit("0.5", 100)).toMatchObject({ value: { source: { certainty: "quoted" } } });
    expect(vtLimit("3P", 100)).toMatchObject({ value: { source: { certainty: "read" } } });
  });
});

describe("classes of American practice and of protective cores", () => {
  // IEEE C57.13 table 6 and C57.13.6 table 1, quoted by an instrument transformer maker: ratio ±% at 100 % and 10 %
  // (0.15: 5 %) of rated current.
  it.each([
    ["0.3B-0.5", 100, 0.3],
    ["0.3 B0.2", 10, 0.6],
    ["0.6B-1.8", 100, 0.6],
    ["1.2B-2", 10, 2.4],
    ["0.15 B-0.5", 5, 0.3],
    ["0.15S B-0.5", 5, 0.15],
    ["0.15S", 60, 0.15],
  ] as const)("%s at %d %%: %d %%", (name, percent, ratio) => {
    expect(figure(ctLimit(name, percent))).toBe(ratio);
  });

  it("between 10 % and 100 % the class passes and twice the class fails", () => {
    expect(figure(ctLimit("0.3", 50))).toBe(0.3);
    expect(figure(ctLimit("0.3", 50, "wrong"))).toBe(0.6);
    expect(figure(ctLimit("0.3", 5))).toBe("none");
    expect(figure(ctLimit("0.3", 5, "wrong"))).toBe(10);
  });

  // Relaying classes ±3 % at rated current; PX 0.25 %, PXR 1 %; TPX 0.5 %, TPY and TPZ 1 % (memory, PX quoted by two articles).
  it.each([
    ["C200", 3],
    ["K400", 3],
    ["T100", 3],
    ["PX", 0.25],
    ["PXR", 1],
    ["TPX", 0.5],
    ["TPY", 1],
    ["TPZ", 1],
    ["5PR20", 1],
    ["10P10 30 VA", 3],
    ["0.5 FS5", 0.5],
    ["cl. 0.2S", 0.2],
    ["0,5", 0.5],
    ["0.5/5P20", 0.5],
  ] as const)("%s at rated current: %d %%", (name, ratio) => {
    expect(figure(ctLimit(name, 100))).toBe(ratio);
  });

  // IEEE C57.13 (quoted): 90 % to 110 % of rated voltage; 3P and 6P twice at 2 % (quoted).
  it.each([
    ["0.3WXYZ", 90, 0.3],
    ["1.2Z", 110, 1.2],
    ["0.6", 100, 0.6],
    ["0.5/3P", 100, 0.5],
    ["3P", 2, 6],
    ["6P", 2, 12],
    ["3P", 3, 3],
    ["0.1", 100, 0.1],
  ] as const)("voltage transformer %s at %d %%: %d %%", (name, percent, ratio) => {
    expect(figure(vtLimit(name, percent))).toBe(ratio);
  });

  // IEEE C57.13 rates one winding in several classes, each for its own burdens; IEC joins classes that hold together.
  it.each([
    ["0.3/1.2", 1.2],
    ["0.3WXY,1.2Z", 1.2],
    ["0.5/3P", 0.5],
  ])("voltage transformer %s: wrong for certain beyond %d %%", (name, ratio) => {
    expect(figure(vtLimit(name, 100, "wrong"))).toBe(ratio);
  });
});
