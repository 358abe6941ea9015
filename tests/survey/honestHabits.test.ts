import { describe, expect, it } from "vitest";
import { drawSheet, readingsOf, surveyOf, told } from "./support";

/** Habits that are no faults, each beside the fault that it could hide; all sheets are invented. */
const tellsOf = (drawing: string) => told([drawSheet("Sheet", drawing)]);

describe("a line that stands twice", () => {
  const sheet = (verdict: string, between: string, remark: string, first = 41.6) => `
Contact resistance, µΩ, 100 A, max 55
Unit | A | B | C | P/F | Comment
BKR 11 | 37.5 | 38.7 | 40.2 | P |
BKR 12 | 34.8 | 37.3 | 35.5 | P |
BKR 13 | ${first} | 40.3 | 39.2 | ${verdict} |
BKR 14 | 36.3 | 36.4 | 37.8 | P |
BKR 15 | 37.9 | 36.1 | 37.2 | P |
BKR 16 | 38.1 | 36.6 | 37.4 | P |
${between}
BKR 13 | 38.4 | 39.1 | 38.8 | P | ${remark}`;
  const TWICE = ["survey-repeated B10", "survey-repeated C10", "survey-repeated D10"];
  it("is asked about where nothing says why", () => {
    expect(tellsOf(sheet("P", "", ""))).toEqual(TWICE);
    expect(tellsOf(sheet("P", "Feeders", ""))).toEqual(TWICE);
  });
  it("is a repeat where the first was marked as failed", () => {
    expect(tellsOf(sheet("F", "", "", 79.6))).toEqual(["survey-limit B5"]);
  });
  it.each([
    "Retest after service",
    "Nach der Reinigung",
    "Contre-essai",
    "Después de la limpieza",
    "Após o reparo",
  ])("is a repeat under %s", (words) => {
    expect(tellsOf(sheet("P", words, ""))).toEqual([]);
    expect(tellsOf(sheet("P", "", words))).toEqual([]);
  });
});

describe("a number in a formula", () => {
  const sheet = (formula: (row: number) => string, rows: readonly string[]) =>
    [
      "Primary injection of current transformers",
      "Panel | Phase | Ratio | I prim. A | I sec. A | Error %",
      ...rows.map((row, index) => `${row} | =${formula(index + 3)} -> 0.1`),
    ].join("\n");
  const rows = ["P1", "P2", "P3", "P4", "P5", "P6"].flatMap((panel, index) =>
    ["A", "B", "C"].map((phase, at) => {
      const primary = 200 + index * 1.3 + at * 0.7;
      const rated = index === 0 ? 1200 : 400;
      return `${panel} | ${phase} | ${rated}/1 | ${primary} | ${(primary + 0.2) / rated}`;
    }),
  );
  const factor = (at: number) => (at < 6 ? 1200 : 400);
  it("may be the ratio of its line", () => {
    const error = (at: number) => `(E${at}*${factor(at)}-D${at})/D${at}*100`;
    expect(tellsOf(sheet(error, rows))).toEqual([]);
  });
  it("may be the ratio in another form of writing", () => {
    const error = (at: number) => `(E${at}*${factor(at)}/1-D${at})/D${at}*100`;
    expect(tellsOf(sheet(error, rows))).toEqual([]);
  });
  it("is told where it is the ratio of another line, or the formula refers to one", () => {
    const other = (at: number) => `(E${at}*${at === 9 ? 600 : factor(at)}-D${at})/D${at}*100`;
    expect(tellsOf(sheet(other, rows))).toEqual(["survey-formula F9"]);
    const shifted = (at: number) => {
      const from = at === 9 ? 8 : at;
      return `(E${from}*${factor(at)}-D${from})/D${from}*100`;
    };
    expect(tellsOf(sheet(shifted, rows))).toEqual(["survey-formula F9"]);
  });
});

describe("a torque that is called for", () => {
  const across = (torque: number) => `
Tightening of joints (N·m), tolerance ± 10 %
Joint | Required | P1 | P2 | P3 | P4
Busbars M12 | 70 | 72 | 69 | 71 | ${torque}
Earth M10 | 40 | 39 | 39 | 41 | 40
Lugs M16 | 120 | 117 | 122 | 120 | 124
Result | | ok | ok | ok | ok`;
  it("bounds none by itself where the panels stand across", () => {
    expect(tellsOf(across(70))).toEqual([]);
    expect(tellsOf(across(76))).toEqual([]);
  });
  it("tells the unit of what stands beside it", () => {
    const sheet = (torque: number) => `
Anzugsmomente, Toleranz ± 10 %
Verbindung | Feld 1 | Feld 2 | Feld 3 | Feld 4 | Soll Nm
Sammelschiene M12 | 71 | 70 | 72 | ${torque} | 70
Erdung M10 | 40 | 41 | 39 | 40 | 40
Kabel M16 | 121 | 118 | 120 | 119 | 120`;
    expect(readingsOf(sheet(71))[0]).toBe("torque; Feld 1; Sammelschiene M12; 71 N·m; B3");
    expect(tellsOf(sheet(71))).toEqual([]);
    expect(tellsOf(sheet(52))).toContain("survey-limit E3");
  });
  it("may be missed by what the heading allows", () => {
    const sheet = (share: number, torque: number) =>
      across(torque).replace("± 10 %", `± ${share} %`);
    expect(tellsOf(sheet(5, 65))).toContain("survey-limit F3");
    expect(tellsOf(sheet(15, 61))).not.toContain("survey-limit F3");
  });
  it("is missed from below and from above", () => {
    expect(tellsOf(across(48))).toContain("survey-limit F3");
    expect(tellsOf(across(80))).toContain("survey-limit F3");
  });
});

describe("titles by their symbols", () => {
  const withstand = (unit: string, seconds: number) => `
AC withstand 28 kV, 60 s
Panel | Phase | U / kV | ${unit} | I / mA | Result
Z1 | L1 | 28 | 60 | 1.7 | OK
Z1 | L2 | 28 | 60 | 2.1 | OK
Z1 | L3 | 28 | ${seconds} | 2.3 | OK
Z2 | L1 | 28 | 60 | 1.9 | OK`;
  it.each(["t / s", "t/s", "t (s)", "t in s"])("%s is a time, and no two phases", (title) => {
    expect(tellsOf(withstand(title, 20))).toEqual(["survey-duration D5"]);
    expect(tellsOf(withstand(title, 60))).toEqual([]);
  });
  it("phases parted by strokes stay phases", () => {
    expect(
      readingsOf(`
Insulation resistance, GΩ
Panel | R / S | S / T | T / R
W1 | 41 | 43 | 44
W2 | 45 | 46 | 42`).slice(0, 3),
    ).toEqual([
      "insulation; W1; L1-L2; 41 GΩ; B3",
      "insulation; W1; L2-L3; 43 GΩ; C3",
      "insulation; W1; L3-L1; 44 GΩ; D3",
    ]);
  });
  it("what a spring takes to be charged is a reading of the mechanism", () => {
    expect(
      surveyOf(`
C. Mécanisme
Cellule | Armement s | Compteur avant | Compteur après | Fermeture mini V | Avis
D1 | 10.3 | 31 | 40 | 39 | bon
D2 | 7.1 | 38 | 48 | 39 | bon`).blocks.map(({ kinds }) => kinds),
    ).toEqual([["mechanism"]]);
  });
  it("Op. over initials is who did it, and over strokes what was done", () => {
    const sheet = (initials: string) => `
Contact resistance, µΩ, 100 A
Panel | A | B | C | Op.
W1 | 35.1 | 36.2 | 34.3 | kp
W2 | 36.1 | 37.3 | 35.2 | kp
W3 | 33.1 | 36.1 | 34.9 | ${initials}
W4 | 38.1 | 37.2 | 39.3 | gd
W5 | 37.1 | 35.5 | 38.4 | gd`;
    expect(tellsOf(sheet(""))).toEqual(["survey-blank E5"]);
    expect(tellsOf(sheet("gd"))).toEqual([]);
  });
});

describe("a list of checks with the panels across", () => {
  const sheet = (mark: string, legend: string) => `
${legend}
Check | Cub 1 | Cub 2 | Cub 3 | Cub 4
Fixed to the floor frame | S | S | S | S
Doors and locks | S | S | S | S
Shutters | S | S | n/a | S
Labels | S | S | S | ${mark}`;
  const LEGEND = "Erection check sheet – S satisfactory, X to be put right, n/a";
  it("is read by the letters that it explains, with or without a sign", () => {
    for (const legend of [LEGEND, "Erection checks: S = satisfactory, X = to be put right"]) {
      const [block] = surveyOf(sheet("S", legend)).blocks;
      expect(block?.kinds).toEqual(["installation"]);
      expect(block?.panels).toEqual(["Cub 1", "Cub 2", "Cub 3", "Cub 4"]);
      expect(tellsOf(sheet("S", legend))).toEqual([]);
    }
  });
  it("a stroke is no gap where the sheet explains it", () => {
    const german = (mark: string) => `
Montagekontrolle: i = in Ordnung, m = Mangel, – entfällt
Prüfpunkt | Feld 1 | Feld 2 | Feld 3 | Feld 4
Befestigung am Rahmen | i | i | i | i
Türen und Schlösser | i | i | i | i
Druckentlastung frei | i | i | – | i
Beschriftung | i | i | i | ${mark}`;
    expect(tellsOf(german("i"))).toEqual([]);
    expect(tellsOf(german("m"))).toEqual(["survey-word E6"]);
    expect(tellsOf(german(""))).toContain("survey-missing E6");
  });
  it("a check without an answer is told", () => {
    expect(tellsOf(sheet("", LEGEND))).toContain("survey-missing E6");
  });
});

describe("bounds of several poles together", () => {
  it.each([
    "poles within 3 ms",
    "max between poles 3 ms",
    "Pole untereinander max 3 ms",
    "écart 3 ms max",
    "max 3 ms between poles",
  ])("%s bounds no time", (bound) => {
    const sheet = `
Breaker times at 110 V DC; close 45 to 75 ms, open 25 to 45 ms, ${bound}
Panel | Stroke | A ms | B ms | C ms | Verdict
A1 | close | 58.9 | 59.4 | 58.8 | PASS
A1 | open | 30.7 | 31.5 | 31.4 | PASS
A2 | close | 56.5 | 56.2 | 56.4 | PASS
A2 | open | 33.5 | 32.5 | 32.9 | PASS
A3 | close | 54.4 | 54.3 | 55 | PASS`;
    expect(tellsOf(sheet)).toEqual([]);
    expect(tellsOf(sheet.replace("55 |", "58.1 |"))).toEqual(["survey-apart E7"]);
  });
});

describe("bounds of a breaker's operations in Italian", () => {
  it("each bounds its own operation", () => {
    const sheet = (closing: string) => `
Prove sugli interruttori
Tempi a 110 V c.c.: chiusura 45–75 ms, apertura 25–45 ms, scarto fra i poli al più 3 ms
Scomparto | Manovra | L1 ms | L2 ms | L3 ms | Esito
A1 | chiusura | 55.8 | 57 | 57.2 | conforme
A1 | apertura | 31.9 | 31.2 | 31.6 | conforme
A2 | chiusura | 57.6 | ${closing} | 57.1 | conforme
A2 | apertura | 34 | 33.8 | 33.5 | conforme
A3 | chiusura | 56.4 | 56.2 | 56.9 | conforme`;
    expect(tellsOf(sheet("55.9"))).toEqual([]);
    expect(tellsOf(sheet("84.6"))).toContain("survey-apart D6");
  });
});

describe("a day to come", () => {
  it("is told for itself, and puts no other day out of order", () => {
    const log = (day: string) => `
Log of tests
Date | Panel | Test | Value | Unit
${["W1", "W2", "W3", "W4", "W5"]
  .map(
    (panel, at) =>
      `${at === 4 ? day : "2031-04-01"} | ${panel} | Insulation resistance before | ${31 + at} | GΩ\n2031-04-02 | ${panel} | Withstand | 27 | kV`,
  )
  .join("\n")}`;
    expect(tellsOf(log("2031-04-01"))).toEqual([]);
    expect(tellsOf(log("2033-04-01"))).toEqual(["survey-future A11"]);
    expect(tellsOf(log("2031-04-05"))).toContain("survey-stage-order A12");
  });
});

describe("two forms of one layout", () => {
  const form = (name: string, by: string, first: number) =>
    drawSheet(
      name,
      `
Panel | ${name} | Operator | ${by}
Insulation resistance, 5 kV DC
Between | GΩ | Result
L1-E | ${first} | ok
L2-E | ${first + 2} | ok
L3-E | ${first + 1} | ok`,
    );
  it("a name that one has and the other lacks is asked for", () => {
    expect(told([form("C21", "S. V.", 31), form("C22", "", 36)])).toEqual([
      "survey-blank-label C22!D1",
    ]);
    expect(told([form("C21", "S. V.", 31), form("C22", "S. V.", 36)])).toEqual([]);
  });
});
