import { describe, expect, it } from "vitest";
import { checked, drawSheet, readingsOf, surveyOf, told } from "./support";

/** Every sheet here is invented; how people lay out such tables is common practice, no source. */
const toldOf = (drawing: string, merges?: readonly string[]) =>
  checked([drawSheet("Sheet", drawing, merges)]).findings.map(
    ({ weight, rule, address }) => `${weight} ${rule} ${address}`,
  );

describe("a bound is for the columns that it stands behind", () => {
  const breakers = (contact: string, insulation: string) => `
Vacuum breakers
Breaker | Pole resistance, µΩ | | | Max | IR across open poles, GΩ | | | Min | Closing, ms | | | P/F
 | A | B | C | | A | B | C | | A | B | C |
52-1 | 36 | 38 | 37 | 55 | 115 | 107 | 100 | 5 | 57 | 57 | 58 | P
52-2 | 41 | ${contact} | 39 | 55 | 92 | 114 | 70 | 5 | 55 | 56 | 56 | P
52-3 | 40 | 40 | 41 | 55 | 82 | ${insulation} | 98 | 5 | 54 | 54 | 54 | P`;
  it("of several groups each with its own, one above and one below", () => {
    expect(toldOf(breakers("39", "47"))).toEqual([]);
    expect(toldOf(breakers("61", "2.3"))).toEqual(["stop survey-limit C5", "stop survey-limit G6"]);
  });
  it("of two groups of one unit each with its own", () => {
    const times = (opening: number) => `
Operating times, ms
Breaker | Close A | Close B | Close C | Max | Trip A | Trip B | Trip C | Max | P/F
52-1 | 57 | 57 | 58 | 65 | 31 | 31 | 32 | 40 | P
52-2 | 55 | 56 | 56 | 65 | ${opening} | 42 | 42 | 40 | P
52-3 | 54 | 54 | 54 | 65 | 30 | 30 | 31 | 40 | P`;
    expect(toldOf(times(41)).toSorted()).toEqual([
      "stop survey-limit F4",
      "stop survey-limit G4",
      "stop survey-limit H4",
    ]);
  });
  it("of all readings where it is the only one", () => {
    expect(
      toldOf(`
Contact resistance, µΩ
Breaker | A | B | C | Max | P/F
52-1 | 36 | 38 | 37 | 55 | P
52-2 | 60 | 39 | 39 | 55 | P
52-3 | 40 | 40 | 41 | 55 | P`),
    ).toEqual(["stop survey-limit B4"]);
  });
  it.each([
    ["Gleichlauf [ms]", "zulässig [ms]"],
    ["Écart entre pôles (ms)", "Maximum (ms)"],
    ["Dif. máx. (ms)", "Admisible"],
    ["Spread ms", "Not above"],
  ])("of the spread right before it, and not of the times: %s, %s", (spread, allowed) => {
    const sheet = (third: number) => `
Switching times
Panel | Operation | L1 [ms] | L2 [ms] | L3 [ms] | ${spread} | ${allowed} | Result
J1 | close | 59.4 | 60 | 59.1 | =MAX(C3:E3)-MIN(C3:E3) -> 0.9 | 1.5 | OK
J1 | open | 38.2 | 38.7 | 38.6 | =MAX(C4:E4)-MIN(C4:E4) -> 0.5 | 1.5 | OK
J2 | close | 58.2 | 58.5 | ${third} | =MAX(C5:E5)-MIN(C5:E5) -> ${(third - 58.2).toFixed(1)} | 1.5 | OK
J2 | open | 39 | 38.7 | 38.6 | =MAX(C6:E6)-MIN(C6:E6) -> 0.4 | 1.5 | OK`;
    expect(toldOf(sheet(59))).toEqual([]);
    expect(toldOf(sheet(60.2))).toEqual(["query survey-apart E5"]);
  });
});

describe("words for a bound on one side", () => {
  it.each([
    ["Not below", "Not above"],
    ["nicht unter", "nicht über"],
    ["pas moins de", "à ne pas dépasser"],
    ["no menor que", "no mayor que"],
    ["não inferior a", "não superior a"],
    ["لا يقل عن", "لا يزيد عن"],
  ])("%s, %s", (least, most) => {
    const sheet = (title: string, unit: string, bound: number) =>
      surveyOf(`
Cubicle | L1 ${unit} | L2 ${unit} | L3 ${unit} | ${title} | Result
C1 | 33.8 | 34.8 | 34 | ${bound} | OK
C2 | 31.4 | 31 | 31.7 | ${bound} | OK
C3 | 30.2 | 29.8 | 33.9 | ${bound} | OK`).blocks[0]?.entries[0]?.limits.map(
        ({ side, number }) => `${side} ${number}`,
      );
    expect(sheet(least, "GΩ", 5)).toEqual(["least 5"]);
    expect(sheet(most, "µΩ", 40)).toEqual(["most 40"]);
  });
  it.each([
    ["not above 60 µΩ", "most"],
    ["not below 60 µΩ", "least"],
    ["no mayor que 60 µΩ", "most"],
    ["no inferior a 60 µΩ", "least"],
    ["pas supérieure à 60 µΩ", "most"],
    ["não superior a 60 µΩ", "most"],
  ])("in running text: %s", (words, side) => {
    const [block] = surveyOf(`
Contact resistance, ${words}
Cubicle | A | B | C
C1 | 33.8 | 34.8 | 34
C2 | 31.4 | 31 | 31.7`).blocks;
    expect(block?.facts.limits).toMatchObject([{ side, number: 60 }]);
  });
});

describe("what a level was held and how long", () => {
  const sheet = (second: number, level: number, flashover: string) => `
HV test at 22.4 kV, 50 Hz, each phase in turn with the others earthed, one minute
Cubicle | kV | Red, s | Yellow, s | Blue, s | Flashover | Outcome
C1 | 22.4 | 60 | 60 | 60 | none | Accepted
C2 | 22.4 | 60 | ${second} | 60 | none | Accepted
C3 | ${level} | 60 | 60 | 60 | none | Accepted
C4 | 22.4 | 60 | 60 | 60 | ${flashover} | Accepted
C5 | 22.4 | 60 | 60 | 60 | none | Accepted`;
  it("seconds of each phase beside one level are of the withstand test", () => {
    expect(readingsOf(sheet(60, 22.4, "none")).slice(0, 3)).toEqual([
      "withstand; C1; L1; 22.4 kV; B3",
      "withstand; C1; L2; 22.4 kV; B3",
      "withstand; C1; L3; 22.4 kV; B3",
    ]);
    expect(told([drawSheet("Sheet", sheet(6, 18, "yes"))], { ratedkV: 12, basis: "IEC" })).toEqual([
      "survey-discharge F6",
      "survey-duration D4",
      "survey-level B5",
    ]);
  });
  it.each([
    ["VLF kV", "Min. on"],
    ["Test kV", "Minutes held"],
    ["Ensayo (kV)", "Tiempo (min)"],
  ])("%s beside %s is no limit and no reading of its own", (level, time) => {
    const cables = (minutes: number) => `
Feeder cables, VLF 0.1 Hz
Feeder | Ph | Megger GΩ | ${level} | ${time} | mA | P/F
Fdr 1 | A | 20.8 | 21 | 30 | 1.28 | P
Fdr 1 | B | 22.1 | 21 | 30 | 1.37 | P
Fdr 1 | C | 11.8 | 21 | 30 | 0.97 | P
Fdr 2 | A | 20.8 | 21 | ${minutes} | 1.38 | P
Fdr 2 | B | 24.3 | 21 | 30 | 1.28 | P
Fdr 2 | C | 10.7 | 21 | 30 | 0.81 | P`;
    expect(toldOf(cables(30))).toEqual([]);
    expect(toldOf(cables(13))).toEqual(["stop survey-duration E6"]);
  });
});

describe("insulation at both sides of a level was measured before and after it", () => {
  it.each([
    ["IR in (G)", "IR out (G)", "5 G or more"],
    ["Erste Messung GΩ", "Zweite Messung GΩ", "mindestens 5 GΩ"],
  ])("%s, %s; %s", (first, second, bound) => {
    const sheet = (last: number) => `
IR 2500 V 1 min both sides of the hipot, ${bound}.  Hipot 27 kV AC, 1 min a phase.
Sect. | Phase | ${first} | kV | sec | mA | ${second} | Good?
Sect. 1 | A | 37.9 | 27 | 60 | 0.62 | 35.7 | ✓
Sect. 1 | B | 21 | 27 | 60 | 1.12 | ${last} | ✓
Sect. 1 | C | 33.9 | 27 | 60 | 1.46 | 34.7 | ✓`;
    expect(readingsOf(sheet(19.8)).filter((line) => line.startsWith("insulation"))).toEqual([
      "insulation; Sect. 1; A; before; 37.9 GΩ; C3",
      "insulation; Sect. 1; A; after; 35.7 GΩ; G3",
      "insulation; Sect. 1; B; before; 21 GΩ; C4",
      "insulation; Sect. 1; B; after; 19.8 GΩ; G4",
      "insulation; Sect. 1; C; before; 33.9 GΩ; C5",
      "insulation; Sect. 1; C; after; 34.7 GΩ; G5",
    ]);
    expect(toldOf(sheet(19.8))).toEqual([]);
    expect(toldOf(sheet(3.4))).toContain("stop survey-limit G4");
  });
});

describe("days in words over lines", () => {
  it.each(["Mon Jul 13 2026   dry, 74 F", "13 de julio de 2026, seco", "Shift of 13-Jul-26, dry"])(
    "%s",
    (banner) => {
      const [block] = surveyOf(`
Contact resistance, µΩ
Panel | A | B | C
${banner}
P1 | 33 | 34 | 35
P2 | 33 | 34 | 35`).blocks;
      expect(block?.entries[0]?.facts.day).toBe(46216);
    },
  );
});

describe("formulas tell what a column is", () => {
  it.each([
    ["Book", "Set", "Off %", (row: number) => `=(D${row}/C${row}-1)*100`],
    ["Blatt", "Wert 2", "Abw. %", (row: number) => `=(D${row}-C${row})/C${row}*100`],
    ["Plan", "Obra", "Error %", (row: number) => `=ROUND(100*(D${row}/C${row}-1),1)`],
  ])("%s | %s | %s", (called, applied, off, formula) => {
    const sheet = (fault: number) => `
BUS JOINT TORQUE, LBF-FT
Cubicle | Joint | ${called} | ${applied} | ${off} | P/F
Main | main bus | 50 | 50 | ${formula(3)} -> 0 | P
Main | ground bus | 30 | 31 | ${formula(4)} -> 3.3 | P
Fdr 1 | main bus | 50 | ${fault} | ${formula(5)} -> ${(fault / 50 - 1) * 100} | P
Fdr 1 | ground bus | 30 | 30 | ${formula(6)} -> 0 | P`;
    expect(readingsOf(sheet(51))[0]).toBe("torque; Main; main bus; 50 lbf·ft; D3");
    expect(toldOf(sheet(51))).toEqual([]);
    expect(toldOf(sheet(38))).toEqual(["stop survey-limit D5"]);
  });
});

describe("values at the base temperature belong to the reading of their phase", () => {
  const sheet = (b: number, k: number) => `
Megohm readings, 2500 V dc, 5.0 GΩ or better at 20 °C
Cubicle | A-Gnd GΩ | B-Gnd GΩ | C-Gnd GΩ | Gear °C | k | A @ 20 °C | B @ 20 °C | C @ 20 °C | Lowest @ 20 °C | P/F
${[3, 4, 5, 6, 7]
  .map((row) => {
    const [own, factor, a] = [row === 5 ? b : 18 + row, row === 4 ? k : 1.25, 24 + row];
    return `Cub ${row} | ${a} | ${own} | ${31 + row} | 25 | ${factor} | =B${row}*$F${row} -> ${a * factor} | =C${row}*$F${row} -> ${own * factor} | =D${row}*$F${row} -> ${(31 + row) * factor} | =MIN(G${row}:I${row}) -> ${Math.min(a, own) * factor} | P`;
  })
  .join("\n")}`;
  it("is told of the phase that is low, and of the line with another factor", () => {
    expect(toldOf(sheet(18, 1.25))).toEqual([]);
    expect(toldOf(sheet(3.1, 1.25))).toContain("stop survey-limit C5");
    expect(toldOf(sheet(18, 0.8)).map((line) => line.replace(/[A-Z]+\d+$/, ""))).toContain(
      "query survey-correction ",
    );
  });
});

describe("insulation of one place scatters", () => {
  it("by a few times without a question, and not by ten", () => {
    const sheet = (last: number) => `
Insulation resistance
Panel | Phase | Reading GΩ | Result
${[58.5, 64.2, 61.8, 67.5, 55.1, last].map((value, index) => `SG-${index} | R-E | ${value} | OK`).join("\n")}`;
    expect(toldOf(sheet(25.7))).toEqual([]);
    expect(toldOf(sheet(6.2))).toEqual(["query survey-off-series C8"]);
  });
});

describe("earth as the other side of a measurement is no test of the earthing", () => {
  it("contacts stay contacts under the heading of insulation to earth", () => {
    expect(
      surveyOf(`
A.  Insulation to earth, 5 kV DC (megohms)
Cubicle | Red | Yellow | Blue
C1 | 11500 | 33800 | 38500
C2 | 15900 | 24600 | 40500

B.  Closed breaker, pole by pole, 100 A DC (microohms)
Cubicle | Red | Yellow | Blue
C1 | 33.8 | 34.8 | 34
C2 | 31.4 | 31 | 31.7`).blocks.map(({ kinds }) => kinds),
    ).toEqual([["insulation"], ["contact"]]);
  });
  it("a control voltage in the heading makes no control wiring", () => {
    expect(
      surveyOf(`
IR set MG-2   125 VDC control
Breaker | IR across open contacts, GΩ A | IR across open contacts, GΩ B
52-1 | 115 | 107
52-2 | 92 | 114`).blocks.map(({ kinds }) => kinds),
    ).toEqual([["insulation"]]);
  });
});
