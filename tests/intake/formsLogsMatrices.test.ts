import { describe, expect, test } from "vitest";
import { testSays } from "../../src/intake/understand/blockFacts";
import { kindNamed } from "../../src/intake/understand/kindWords";
import { pressureMark } from "../../src/intake/words/pressureMark";
import { KINDS } from "../../src/records/kinds";
import { placed as placedInMesa } from "../support/mesaIntake";
import { placedInto, sampleBook } from "../support/sampleIntake";

/**
 * Forms with dot leaders, logs with a column of tests, curves, and tables with panels across, for the
 * sample lineups (all invented). What belongs where follows from the text itself.
 */
const placed = placedInto(sampleBook("harbour-substation"));

const FORM = [
  "FICHE DE CONTRÔLE (valeurs inventées)",
  "",
  "Cellule ............ : =H07",
  "Disjoncteur ........ : Q0",
  "Pression SF6 ....... : 5,06 bar (relatif)",
  "Température du gaz . : 21 °C",
  "Pression atmosph. .. : 1009 hPa",
  "Alarme à ........... : 4,53 bar",
];

describe("a form with leaders", () => {
  test("has the label before its dots, however few", () => {
    const found = placed("fiche.txt", FORM);
    expect(found).toContain("gas =H07 Breaker Q0 reading=0.506");
    expect(found).toContain("gas =H07 Breaker Q0 pressure=100.9");
    expect(found).toContain("gas =H07 Breaker Q0 temperature=21");
  });

  test.each(["Pression externe", "Pression relevée", "Pression atmosph."])(
    "%s of the size of the air's is no gas pressure, whatever else is missing",
    (label) => {
      const without = FORM.filter((line) => !line.startsWith("Pression"));
      const found = placed("fiche.txt", [...without, `${label} ... : 1009 hPa`]);
      expect(found.filter((line) => line.includes(" reading="))).toEqual([]);
    },
  );

  test.each([
    ["5,06 bar (relatif)", "gauge"],
    ["5,10 bar (Überdruck)", "gauge"],
    ["6,1 bar (absolu)", "absolute"],
    ["6,1 bar (Absolutdruck)", "absolute"],
  ])("%s is a pressure above %s", (text, mark) => {
    expect(pressureMark(text)).toBe(mark === "gauge" ? "gauge" : "absolute");
  });
});

test("a form has a wide gap before its readings, without a mark", () => {
  const found = placed("karte.txt", [
    "Prüfkarte Leistungsschalter (erfunden)",
    "Feld ................ =H03",
    "Schalter ............ Q0",
    "Prüfer .............. K. Lindner",
    "Prüfstrom ........... 100 A",
    "Übergangswiderstand L1  34,2 µΩ",
    "Übergangswiderstand L2  34,8 µΩ",
    "Übergangswiderstand L3  35,1 µΩ",
  ]);
  expect(found).toContain("contact =H03 Breaker Q0 L2 reading=34.8");
  expect(found).toContain("contact =H03 Breaker Q0 L3 testCurrent=100");
});

test("a panel that the records do not know is none of theirs, though they have one such part alone", () => {
  const lines = ["Panel,Breaker,Pressure (bar),Gas temperature (°C)", "X99,Q0,5.1,20"];
  expect(placed("gas.csv", lines)).toEqual([]);
  const known = lines.map((line) => line.replace("X99", "=H07"));
  expect(placed("gas.csv", known)).toContain("gas =H07 Breaker Q0 reading=0.51");
});

describe("a log with a column of tests", () => {
  test("tells in each test's name what it was made with", () => {
    const found = placed("journal.csv", [
      "Date;Cellule;Essai;Phase;Valeur;Unité;Fait par;Appareil",
      "05/05/2026;H01;Résistance de contact disjoncteur, 100 A;L1;32,1;µΩ;A. Morin;MO-1",
      "05/05/2026;H01;Résistance de contact disjoncteur, 100 A;L2;33,0;µΩ;A. Morin;MO-1",
      "05/05/2026;H01;Isolement avant diélectrique, 5 kV 1 min;L1-T;88;GΩ;A. Morin;IR-1",
      "05/05/2026;H01;Isolement avant diélectrique, 5 kV 1 min;L2-T;91;GΩ;A. Morin;IR-1",
      "05/05/2026;H01;Temps de fermeture;L1;55,1;ms;A. Morin;BT-1",
      "05/05/2026;H01;Temps d'ouverture;L1;33,1;ms;A. Morin;BT-1",
    ]);
    expect(found).toContain("contact =H01 Breaker Q0 L1 testCurrent=100");
    expect(found).toContain("contact =H01 Breaker Q0 L2 reading=33");
    expect(found).toContain("insulation =H01 Circuit L2-E before testVoltage=5000");
    expect(found).toContain("timing =H01 Breaker Q0 closing l1=55.1");
    expect(found).toContain("timing =H01 Breaker Q0 opening l1=33.1");
  });

  test("goes by the record kind that its block is, not by the test that a stage is after", () => {
    const found = placed("pruefbuch.csv", [
      "Feld;Prüfung;Leiter;Messwert;Einheit",
      "H02;Kontaktwiderstand LS (100 A);L1;34,1;µΩ",
      "H02;Kontaktwiderstand LS (100 A);L2;35,0;µΩ",
      "H02;Isolationswiderstand nach HV-Prüfung, 5 kV DC;L1-E;71;GΩ",
      "H02;Isolationswiderstand nach HV-Prüfung, 5 kV DC;L2-E;77;GΩ",
    ]);
    expect(found).toContain("insulation =H02 Circuit L1-E after reading=71000");
    expect(found).toContain("contact =H02 Breaker Q0 L2 testCurrent=100");
  });

  test.each([
    ["CB contact resistance, 100 A", ["100 A"]],
    ["IR before HV, 5 kV 1 min", ["5 kV"]],
    ["Isolationswiderstand nach HV-Prüfung, 5 kV DC", ["5 kV"]],
    ["Contact resistance, breaker 2000 A", []],
    ["Contact resistance, 2000 A", []],
    ["Insulation of cable, 15 kV", []],
    ["Breaker 52, 100 A", []],
  ])("%s says %j of the test, and a rating nothing", (name, said) => {
    expect(testSays(name).map(({ text }) => text)).toEqual(said);
  });

  test.each(["CB closing time", "Temps de fermeture", "tiempo de cierre", "Ausschaltzeit"])(
    "%s is a test of a breaker's times",
    (name) => {
      expect(kindNamed(name, new Set(KINDS.map(({ id }) => id)))).toBe("timing");
    },
  );
});

test.each([
  [
    "Tiempo\tR - tierra\tS - tierra\tT - tierra",
    "Curva de aislamiento, celda =H07, cable desconectado",
  ],
  ["t (s)\tR / terre\tS / terre\tT / terre", "Courbe d'isolement, cellule =H07, câble débranché"],
  ["Zeit\tL1-E\tL2-E\tL3-E", "Isolationskurve Feld =H07, Kabel abgeklemmt"],
])("times down with phases across are a curve: %s", (titles, heading) => {
  const found = placed("curve.txt", [
    `${heading} (invented)`,
    "",
    titles,
    "\tGΩ\tGΩ\tGΩ",
    "15 s\t23,2\t21,2\t23,0",
    "30 s\t28,9\t26,3\t28,6",
    "1 min\t35,2\t32,1\t34,9",
    "10 min\t69,7\t63,6\t69,1",
  ]);
  expect(found).toHaveLength(12);
  expect(found).toContain("indexCurve =H07 Circuit L1-E s15=23200");
  expect(found).toContain("indexCurve =H07 Circuit L3-E min10=69100");
});

test("joints are named with the size of their bolts, panels lie across", () => {
  const lines = [
    "Anzugsmomente [Nm] (erfundene Werte);;;",
    "Verbindung;=H01;=H02;=H04",
    "Sammelschiene M12;69,1;69,6;69,6",
    "Erdschiene M10;39,9;39,8;40,3",
    "Kabelschuhe M16;117,6;118,1;",
  ];
  const found = placed("torque.csv", lines);
  expect(found).toHaveLength(8);
  expect(found).toContain("torque =H04 Busbar applied=69.6");
  // A joint of other bolts is another joint.
  const other = placed("torque.csv", [
    ...lines.slice(0, 3),
    "Erdschiene M12;39,9;39,8;40,3",
    ...lines.slice(4),
  ]);
  expect(other.some((line) => line.includes("Earth bar"))).toBe(false);
});

test("blocks of one panel each are told by their own lines, not by those of the next", () => {
  const block = (panel: string, mV: string) => [
    "",
    `Panel:,${panel},,,`,
    "From main earth bar to,Current (A),Drop (mV),micro-ohm,OK?",
    `Enclosure,100,${mV},,✓`,
    `Door,100,${mV},,✓`,
  ];
  const found = placed("earth.csv", [
    "EARTH CONTINUITY OF SWITCHGEAR (invented data)",
    "Date,7 Apr 2026,By,M. Haddad,Set,EB-1",
    ...block("H01", "67.3"),
    ...block("H02", "69.3"),
    ...block("H03", "20.3"),
  ]);
  expect(found).toHaveLength(12);
  expect(found).toContain("earthing =H02 Door reading=0.0693");
});

test("an element a line, the points of its curve across", () => {
  const found = placedInMesa("relays.csv", [
    "RELAY BENCH SHEET (invented)",
    "Breaker,Relay,Element,Set A,TD,Pickup A,2x PU s,5x PU s,1.2x PU s",
    "52-F1,11-F1,51P,5,3,5.02,21.269,3.957,",
    ",11-F1,50P,40,0.1,39.72,,,0.108",
  ]);
  expect(found).toContain("protection 52-F1 11-F1 51P Pick-up reading=5.02");
  expect(found).toContain("protection 52-F1 11-F1 51P 5 × pick-up reading=3.957");
  expect(found).toContain("protection 52-F1 11-F1 50P 1.2 × pick-up reading=0.108");
});

test("a core whose name begins as a number does is named by a fact, a unit stands before the words of its title", () => {
  const cores = placed("fiche TC.txt", [
    "RAPPORT TC (inventé)",
    "",
    "Cellule ........... : =H01",
    "TC ................ : 1S1-1S2",
    "",
    "Phase;Courant primaire (A);Courant secondaire (A)",
    "L1;400,2;0,2500",
    "L2;400,1;0,2499",
  ]);
  expect(cores).toContain("currentTransformer =H01 1S1-1S2 L1 primary=400.2");
  const cables = placed("VLF.csv", [
    "Essai VLF des câbles (inventé)",
    "Câble;Phase;kV VLF;Durée min;mA fuite",
    "=H02 W1;L1;36;60;1,1",
    "=H02 W1;L2;36;60;1,2",
  ]);
  expect(cables).toContain("cable =H02 W1 L1 applied=36");
});

test("what happened tells of a discharge, and a unit in words of a current", () => {
  const held = placedInMesa("bench.csv", [
    "Dielectric test at bench (made up)",
    "Cell,Live part,kV rms,Held,Leakage mA,What happened",
    "52-F1,A,27.1,1 min,1.01,withstood",
    "52-F1,B,27.0,1 min,2.02,withstood",
    "52-F1,C,27.0,1 min,2.66,withstood",
  ]);
  expect(held.filter((line) => line.endsWith("discharge=No"))).toHaveLength(3);
  const contact = placedInMesa("crew form.csv", [
    "CREW FORM 12 - CONTACT RESISTANCE (invented)",
    "Crew,T. Abel,Date,20-Mar-2026",
    "Meter,DLRO-1,Amps DC,100",
    "",
    "Brkr,Pole,Reading,Unit",
    "52-F1,A,33.4,uohm",
    "52-F1,B,33.5,uohm",
  ]);
  expect(contact.filter((line) => line.endsWith("testCurrent=100"))).toHaveLength(2);
});

test("a printout's names stand before its first title, in a column without one", () => {
  const found = placedInMesa("printout.txt", [
    "BREAKER TIMING              (invented data)",
    "Tested 03/25/2026 by D. Pell",
    "",
    "Breaker: 52-F1      Control volts: 123",
    "            A (ms)   B (ms)   C (ms)   Spread",
    "  Close       56.6     56.2     57.3      1.1",
    "  Trip        33.0     32.6     33.8      1.2",
  ]);
  expect(found.filter((line) => /^timing .*(?:56\.6|33\.8)$/.test(line))).toHaveLength(2);
});

test("a unit stands among the words of a title", () => {
  const found = placedInMesa("coils.csv", [
    "BREAKER MECHANISM CHECKS (invented)",
    "Breaker,Lowest V closing coil worked,Lowest V trip coil worked,Spring charge time (s)",
    "52-F1,78,60,7.8",
    "52-F2,84,56,7.5",
  ]);
  expect(found.filter((line) => /=(?:78|60|7\.8|84|56|7\.5)$/.test(line))).toHaveLength(6);
});

test("multiples of a pick-up have their time's unit right behind", () => {
  const found = placedInMesa("relay.csv", [
    "SECONDARY INJECTION (invented)",
    "Cubicle,Element,Pickup (A),2x (s),5x (s),10x (s)",
    "52-F1,51,3.98,19.179,2.592,0.82",
    "52-F2,51,4.026,19.01,2.594,0.809",
  ]);
  expect(found.filter((line) => /=(?:19\.179|2\.592|19\.01|2\.594)$/.test(line))).toHaveLength(4);
});

test("quantities down may each be of a pole, with the panels across", () => {
  const found = placed("Schaltzeiten.csv", [
    "Schaltzeiten im Prüffeld (erfundene Werte);;",
    "Messung;=H01;=H02",
    "Steuerspannung [V];110;109",
    "EIN L1 [ms];59,2;56,1",
    "EIN L2 [ms];59,5;56,4",
    "EIN L3 [ms];59,5;56,6",
    "AUS L1 [ms];35,5;33,2",
    "AUS L2 [ms];35,5;33,9",
    "AUS L3 [ms];35,8;33,7",
  ]);
  expect(found.filter((line) => /^timing .*=(?:59\.2|56\.1|35\.8|33\.7)$/.test(line))).toHaveLength(
    4,
  );
});
