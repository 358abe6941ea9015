import { expect, test } from "vitest";
import { NO_ANSWERS, takeIn } from "../../src/intake/takeIn";
import { english } from "../support/inWords";
import { book, placed, TODAY } from "../support/mesaIntake";
import { placedInto, sampleBook } from "../support/sampleIntake";

/**
 * Ways to lay exports out that came up later, each in two hands, for the sample lineup by American practice
 * (all invented). What belongs where follows from the text itself.
 */

test.each([
  ["Panel;Cable;Phase", "Conductor-screen 5 kV;Screen (MΩ);Screen kV DC;Screen min"],
  ["Feld;Kabel;Leiter", "Ader gegen Schirm bei 5 kV;Mantel (MΩ);Mantel kV DC;Mantel min"],
])("a cable's core to its screen, and the screen by units alone: %s", (names, readings) => {
  const found = placed("cable.csv", [
    `${names};${readings}`,
    "52-F1;C1;L1;410 GΩ;220;5;1",
    "52-F1;C1;L2;395 GΩ;240;5;1",
    "52-F1;C1;L3;402 GΩ;235;5;1",
  ]);
  expect(found).toContain("cable 52-F1 C1 B insulationRead=395000");
  expect(found).toContain("cable 52-F1 C1 C sheathRead=235");
  expect(found).toContain("cable 52-F1 C1 A sheathApplied=5");
  expect(found).toContain("cable 52-F1 C1 A sheathHeld=1");
  expect(found).toContain("cable 52-F1 C1 A testVoltage=5000");
});

test.each([
  "Breaker;Close coil min V works;Trip coil operates at V lowest;Spring charge (s)",
  "Schalter;Einschaltspule arbeitet ab V niedrig;Auslösespule arbeitet ab V niedrig;Federaufzug (s)",
])("volts among the words of a title: %s", (titles) => {
  const found = placed("mechanism.csv", [titles, "52-F1;88;61;7.4", "52-F2;86;60;7.6"]);
  expect(found).toEqual([
    "mechanism 52-F1 Breaker 52 charged=7.4",
    "mechanism 52-F1 Breaker 52 closingLow=88",
    "mechanism 52-F1 Breaker 52 openingLow=61",
    "mechanism 52-F2 Breaker 52 charged=7.6",
    "mechanism 52-F2 Breaker 52 closingLow=86",
    "mechanism 52-F2 Breaker 52 openingLow=60",
  ]);
});

test("lines of answers in a matrix of checks are no titles, blank cells and n/a among them", () => {
  const found = placed("functions.csv", [
    "Function tests (made up)",
    "Item,52-F1,52-F2,52-F3",
    "Closes and opens locally,OK,OK,OK",
    "Closes and opens remotely,OK,,n/a",
    "Mechanical trip opens,OK,Not OK,OK",
    "Heating and lighting work,,OK,OK",
  ]);
  expect(found).toHaveLength(10);
  expect(found).toContain("function 52-F3 Closes and opens remotely state=Not applicable");
  expect(found).toContain("function 52-F2 Mechanical trip opens state=Not OK");
  expect(found).toContain("function 52-F2 Heating and lighting work state=OK");
});

test("lines of answers of a list of checks are no titles", () => {
  const found = placed("checks.csv", [
    "Funktionsprüfung (erfunden)",
    "Feld;Prüfpunkt;Ergebnis;Bemerkung",
    "52-F1;Closes and opens locally;i.O.;",
    "52-F1;Closes and opens remotely;n.i.O.;Ader vertauscht",
    "52-F1;Heating and lighting work;;",
    "52-F2;Closes and opens locally;i.O.;",
    "52-F2;Heating and lighting work;i.O.;",
  ]);
  expect(found).toContain("function 52-F1 Closes and opens remotely state=Not OK");
  expect(found).toContain("function 52-F2 Heating and lighting work state=OK");
  expect(found).toHaveLength(5);
});

test.each([["CT leads"], ["CT wiring"], ["Circuitos de TC"], ["Current circuits"]])(
  "the circuits of current transformers by another name: %s",
  (circuit) => {
    const found = placed("control.csv", [
      "Control wiring insulation, 500 V DC (made up)",
      "Cubicle,Circuit,MΩ",
      "52-F1,Closing,520",
      `52-F1,${circuit},830`,
    ]);
    expect(found).toContain("control 52-F1 Current circuits reading=830");
  },
);

test("panels by the names that the lineup has for them, parts across in two languages", () => {
  const found = placed("drops.csv", [
    "Continuité de terre / Earth continuity (made up)",
    "Courant d'essai : 100 A c.c.",
    "Circuit / Circuito;Chute enveloppe / Drop enclosure (mV);Chute porte / Drop door (mV)",
    "Feeder 1;31;210",
    "Feeder 2;33;195",
  ]);
  expect(found).toContain("earthing 52-F1 Enclosure reading=0.031");
  expect(found).toContain("earthing 52-F2 Door reading=0.195");
  expect(found).toContain("earthing 52-F2 Door testCurrent=100");
  expect(found).toHaveLength(8);
});

test("titles in two languages that name different parts name none", () => {
  const found = placed("drops.csv", [
    "Earth continuity (made up)",
    "Panel;Drop door / Chute enveloppe (mV);Drop enclosure / Chute porte (mV)",
    "52-F1;31;210",
  ]);
  expect(found).toEqual([]);
});

test.each([["Volts DC"], ["Test volts"], ["Volts d.c."]])("a label of volts: %s", (label) => {
  const found = placed("ir.csv", [
    "Insulation before hipot (made up)",
    `Set:,MEG-1,${label}:,5000`,
    "",
    "Bus,A-G (GΩ),B-G (GΩ),C-G (GΩ)",
    "Bus 1,448,344,563",
  ]);
  expect(found).toContain("insulation Bus 1 Busbar A-E before testVoltage=5000");
});

const TITLES = "Date,Where,Test,Phase,Reading,Unit,By";
const LOG = [
  "2026-05-11,Bus 1,Insulation before hipot 5 kV 1 min,A-G,42.8,GΩ,B. Oland",
  ",,Insulation before hipot 5 kV 1 min,B-G,40.1,GΩ,B. Oland",
  ",,AC hipot 36 kV 60 s,A-G,2.1,mA,B. Oland",
  ",,AC hipot 36 kV 60 s,B-G,2.2,mA,B. Oland",
  "2026-05-12,Bus 2,Insulation before hipot 5 kV 1 min,A-G,37.2,GΩ,B. Oland",
  ",,AC hipot 36 kV 60 s,A-G,2.3,mA,B. Oland",
];

test("a panel that is written once above several tests holds for all of them", () => {
  const found = placed("log.csv", [TITLES, ...LOG]);
  expect(found).toContain("insulation Bus 1 Busbar B-E before reading=40100");
  expect(found).toContain("withstand Bus 1 Busbar B current=2.2");
  expect(found).toContain("withstand Bus 2 Busbar A current=2.3");
  expect(found).toContain("withstand Bus 2 Busbar A applied=36");
});

test("the same in Spanish, the day and the panel beside each other", () => {
  const found = placed("bitácora.csv", [
    "Fecha;Celda;Ensayo;Fase;Lectura;Unidad",
    "11/05/2026;52-F1;Resistencia de contactos 100 A;R;42,8;µΩ",
    ";;Resistencia de contactos 100 A;S;40,1;µΩ",
    ";;Aislamiento del cableado 500 V;;820;MΩ",
    "12/05/2026;52-F2;Resistencia de contactos 100 A;R;37,2;µΩ",
  ]);
  expect(found).toContain("contact 52-F1 Breaker 52 B reading=40.1");
  expect(found).toContain("contact 52-F2 Breaker 52 A reading=37.2");
});

test("a panel that is written once goes no further than the lines that follow it", () => {
  const found = placed("log.csv", [TITLES, ...LOG.slice(0, 3), "", ...LOG.slice(3)]);
  expect(found.filter((line) => line.endsWith("current=2.2"))).toEqual([]);
  expect(found).toContain("withstand Bus 1 Busbar A current=2.1");
  expect(found).toContain("withstand Bus 2 Busbar A current=2.3");
});

test("what stands over the first table goes on over a second right below it", () => {
  const intake = takeIn(
    book,
    [
      {
        name: "relays.csv",
        content: [
          "Secondary injection (made up)",
          "Date: 2026-03-26,,Tester: D. Pell,,Set: RTS-1",
          "Cubicle,Relay,Element,Pickup (A),2x (s),5x (s)",
          "52-M1,11-M1,51P,3.972,18.81,2.57",
          "",
          "Cubicle,Relay,Element,Pickup (A),10x (s)",
          "52-M1,11-M1,51G,0.502,0.818",
        ].join("\n"),
      },
    ],
    NO_ANSWERS,
    TODAY,
  );
  if (!intake.ok) throw new Error(intake.reason(english));
  const by = intake.cells.filter(({ column, value }) => column === "by" && value === "D. Pell");
  expect(by.map(({ source }) => source.line)).toEqual(expect.arrayContaining([4, 7]));
});

test.each([
  ["Insulation resistance ahead of AC hipot", "before"],
  ["Insulation resistance following the hipot", "after"],
  ["Prova di isolamento prima della prova di tensione", "before"],
  ["Resistenza di isolamento dopo la prova dielettrica", "after"],
])("the stage in a heading: %s", (heading, stage) => {
  const found = placed("ir.csv", [`${heading} (made up)`, "Bus;A-G (GΩ);B-G (GΩ)", "Bus 1;41;44"]);
  expect(found).toEqual([
    `insulation Bus 1 Busbar A-E ${stage} reading=41000`,
    `insulation Bus 1 Busbar B-E ${stage} reading=44000`,
  ]);
});

test.each(["All readings following in GΩ", "Prima misura, valori in GΩ"])(
  "no stage is in: %s",
  (heading) => {
    const titles = "Bus;A-G;B-G";
    expect(
      placed("insulation.csv", ["Insulation (made up)", heading, titles, "Bus 1;41;44"]),
    ).toEqual([]);
  },
);

test.each([
  "Cubicle,51P pickup (A),51P 2x (s),51P 5x (s)",
  "Cubicle,51P pickup (A),51P: 2x (s),51P: 5x (s)",
])("an element before its multiples, across: %s", (titles) => {
  const found = placed("relay 11-M1.csv", [
    "Relay 11-M1, secondary injection (made up)",
    titles,
    "52-M1,3.97,18.81,2.57",
  ]);
  expect(found).toEqual([
    "protection 52-M1 11-M1 51P 2 × pick-up reading=18.81",
    "protection 52-M1 11-M1 51P 5 × pick-up reading=2.57",
    "protection 52-M1 11-M1 51P Pick-up reading=3.97",
  ]);
});

test("Italian: torques, times and a withstand test", () => {
  const torque = placed("coppie.csv", [
    "Coppie di serraggio (dati inventati)",
    "Scomparto;Giunto;Coppia prescritta (N·m);Coppia applicata (N·m);Contrassegnato;Riverificato",
    "52-F1;Capicorda cavo;55;56;sì;sì",
    "52-F1;Sbarra di terra;41;41,5;sì;no",
  ]);
  expect(torque).toContain("torque 52-F1 Cable lugs applied=56");
  expect(torque).toContain("torque 52-F1 Ground bus rechecked=No");
  const timing = placed("tempi.csv", [
    "Tempi di manovra interruttori (dati inventati)",
    "Tensione di comando: 125 V c.c.;;;",
    "Interruttore;Manovra;Polo A (ms);Polo B (ms);Polo C (ms)",
    "52-F1;Chiusura;52,1;52,4;52,0",
    "52-F1;Apertura;28,0;28,3;28,1",
  ]);
  expect(timing).toContain("timing 52-F1 Breaker 52 opening l2=28.3");
  expect(timing).toContain("timing 52-F1 Breaker 52 closing controlV=125");
  const withstand = placed("AC.csv", [
    "Prova di tensione a frequenza industriale (inventato)",
    "Sbarra;Fase;Tensione (kV);Durata (s);Corrente (mA);Scarica",
    "Bus 1;A;36;60;2,1;no",
    "Bus 1;B;36;60;2,2;nessuna",
  ]);
  expect(withstand).toContain("withstand Bus 1 Busbar B discharge=No");
  expect(withstand).toContain("withstand Bus 1 Busbar A applied=36");
});

test("times of three poles in a cell, for each operation", () => {
  const found = placed("Schaltzeiten.csv", [
    "Schaltzeiten (erfunden)",
    "Schalter;Ein L1/L2/L3 [ms];Aus L1/L2/L3 [ms];Steuerspannung",
    "52-F1;52,1 / 52,4 / 52,0;28,0 / 28,3 / 28,1;125 V",
    "52-F2;51,1 / 51,4 / 51,0;27,0 / 27,3 / 27,1;125 V",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 closing l2=52.4");
  expect(found).toContain("timing 52-F2 Breaker 52 opening l3=27.1");
  expect(found).toHaveLength(16);
});

test("counters before and after in a cell beside three poles in another", () => {
  const found = placed("mechanism.csv", [
    "Mechanism (made up)",
    "Breaker;Counter before/after;Lowest closing V;Spring charging (s)",
    "52-F1;48 / 56;88;7.4",
    "52-F2;58 / 72;86;7.6",
  ]);
  expect(found).toContain("mechanism 52-F1 Breaker 52 counterAfter=56");
  expect(found).toContain("mechanism 52-F2 Breaker 52 charged=7.6");
});

test.each(["x", "X"])(
  "a column that is ticked by nothing but %s, a dash where there is nothing",
  (x) => {
    const found = placed("torque.csv", [
      "Couples de serrage / Tightening torques (made up)",
      "Cellule / Cubicle;Assemblage / Joint;Couple appliqué / Torque applied (N·m);Repère / Mark",
      `52-F1;Cosses de câble / Cable lugs;56;${x}`,
      `52-F1;Barre de terre / Ground bus;41;${x}`,
      "52-F2;Cosses de câble / Cable lugs;55;–",
    ]);
    expect(found.filter((line) => line.includes("marked"))).toEqual([
      "torque 52-F1 Cable lugs marked=Yes",
      "torque 52-F1 Ground bus marked=Yes",
    ]);
  },
);

test("a cross beside ticks may be either, and is told", () => {
  const found = placed("torque.csv", [
    "Panel;Joint;Torque applied (N·m);Marked",
    "52-F1;Cable lugs;56;✓",
    "52-F1;Ground bus;41;x",
  ]);
  expect(found.filter((line) => line.includes("marked"))).toEqual([
    "torque 52-F1 Cable lugs marked=Yes",
  ]);
});

test("dashes hold nothing: no reading, no part, no remark", () => {
  const found = placed("ir.csv", [
    "Insulation before hipot (made up)",
    "Panel;Part;Phase;R (GΩ);Remark",
    "Bus 1;–;A-G;41;–",
    "Bus 1;—;B-G;-;—",
  ]);
  expect(found).toEqual(["insulation Bus 1 Busbar A-E before reading=41000"]);
});

test("items across as the records call them, panels down", () => {
  const found = placed("functions.csv", [
    "Function tests (made up)",
    "Cell;Closes and opens locally;Closes and opens remotely;Mechanical trip opens",
    "52-F1;X;X;X",
    "52-F2;X;–;X",
  ]);
  expect(found).toHaveLength(5);
  expect(found).toContain("function 52-F2 Mechanical trip opens state=OK");
});

test("a word that an item has among others is not the item", () => {
  const lines = ["Function tests (made up)", "Cell;Local;Remote;Anti-pumping", "52-F1;OK;OK;OK"];
  expect(placed("functions.csv", lines)).toEqual([]);
});

test("s alone is a unit beside kV and mA, direct voltage with points", () => {
  const found = placed("AC.csv", ["Withstand (made up)", "Bus;Phase;kV;s;mA", "Bus 1;A;36;60;2.1"]);
  expect(found).toContain("withstand Bus 1 Busbar A duration=60");
  const insulation = placed("isolamento.csv", [
    "Prova di isolamento prima della prova di tensione, 5 kV c.c. 1 min (dati inventati)",
    "Sbarra;Fase;R (GΩ)",
    "Bus 1;A-T;41,2",
  ]);
  expect(insulation).toContain("insulation Bus 1 Busbar A-E before testVoltage=5000");
});

test.each([" ", "   "])(
  "a phase before its reading, a block a breaker, %j before each",
  (indent) => {
    const found = placed("contacts.txt", [
      "CONTACT RESISTANCE OF THE CIRCUIT BREAKERS (made up)",
      "Tester DLRO-1 / 100 A / 12.05.2026 / K. Lind",
      "",
      "52-F1",
      `${indent}A   34.1 uOhm`,
      `${indent}B   35.2 uOhm`,
      `${indent}C   33.9 uOhm`,
      "",
      "52-F2",
      `${indent}A   36.1 uOhm`,
      `${indent}B   37.2 uOhm`,
      `${indent}C   35.9 uOhm`,
    ]);
    expect(found.filter((line) => line.includes(" reading="))).toHaveLength(6);
    expect(found).toContain("contact 52-F2 Breaker 52 B reading=37.2");
  },
);

test("a heading parted by its comma gives no reading, and the voltage that it says was held", () => {
  const found = placed("hipot.csv", [
    "AC withstand of the buses, 36 kV for 60 s (made up)",
    "Bus,Phase,Leakage (mA),Breakdown?",
    "Bus 1,A,2.1,N",
    "Bus 1,B,2.2,N",
  ]);
  expect(found).toContain("withstand Bus 1 Busbar B applied=36");
  expect(found).toContain("withstand Bus 1 Busbar A duration=60");
  expect(found).toContain("withstand Bus 1 Busbar A current=2.1");
});

test.each([
  ["Celda;TI;Fase;I prim.;I sec.;Polaridad", "400 A", "1,6667 A", "correcta"],
  ["Panel;CT;Phase;I_pri (A);I_sec (A);Polarity", "400", "1,6667", "OK"],
])("the secondary side is no second: %s", (titles, primary, secondary, polarity) => {
  const found = placed("ct.csv", [titles, `52-M1;CT-1;A;${primary};${secondary};${polarity}`]);
  expect(found).toContain("currentTransformer 52-M1 CT-1 A secondary=1.6667");
  expect(found).toContain("currentTransformer 52-M1 CT-1 A primary=400");
});

test("an operation in the name of the test of each line, one line of the other among them", () => {
  const found = placed("registro.csv", [
    "Prova;Scomparto;Fase;Valore;Unità;Data;Esecutore",
    "Resistenza di contatto interruttore;52-F1;A;34,1;µΩ;12/06/2026;F. Bonetti",
    "Resistenza di contatto interruttore;52-F1;B;35,2;µΩ;12/06/2026;F. Bonetti",
    "Tempo di chiusura;52-F1;A;52,1;ms;12/06/2026;F. Bonetti",
    "Tempo di chiusura;52-F1;B;52,4;ms;12/06/2026;F. Bonetti",
    "Tempo di apertura;52-F1;A;28,0;ms;12/06/2026;F. Bonetti",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 closing l2=52.4");
  expect(found).toContain("timing 52-F1 Breaker 52 opening l1=28");
  expect(found).toHaveLength(5);
});

test("volts across with the currents of three phases", () => {
  const found = placed("excitation.csv", [
    "CT magnetising (made up) - 52-M1 CT-1",
    "V,A phase mA,B phase mA,C phase mA",
    "100,12.1,12.4,11.9",
    "200,25.0,25.6,24.8",
  ]);
  expect(found).toContain("excitation 52-M1 CT-1 C v2=200");
  expect(found).toContain("excitation 52-M1 CT-1 B a1=0.0124");
  expect(found).toHaveLength(12);
});

test("a symbol before a pole's letter is no panel that ends with that letter", () => {
  const found = placed("cb_ops.log.csv", [
    "Event,Date,Breaker,Operation,Coil V,t A (s),t B (s),t C (s)",
    "001,2026-03-26,52-F1,Close,125,0.0517,0.0521,0.0515",
    "002,2026-03-26,52-F1,Open,124,0.0285,0.0278,0.0277",
    "003,2026-03-26,52-T,Close,126,0.0563,0.0576,0.0574",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 closing l2=52.1");
  expect(found).toContain("timing 52-T Breaker 52 closing l3=57.4");
});

test("a curve taken from its upper end down is placed from its lower end up", () => {
  const lines = (core: string) =>
    [
      ["420", "0.33"],
      ["349", "0.048"],
      ["250", "0.016"],
    ].map(([volts, amps]) => `${core},A,${volts},${amps}`);
  const found = placed("M1 saturation.csv", [
    "cubicle,52-M1",
    "core,phase,volts rms,amps rms",
    ...lines("CT-1"),
  ]);
  expect(found).toContain("excitation 52-M1 CT-1 A v1=250");
  expect(found).toContain("excitation 52-M1 CT-1 A a1=0.016");
  expect(found).toContain("excitation 52-M1 CT-1 A v3=420");
  expect(found).toHaveLength(6);
});

test.each([
  [";Einschaltzeit (ms);;;Ausschaltzeit (ms);;", "Feld;L1;L2;L3;L1;L2;L3"],
  [";Fermeture [ms];;;Ouverture [ms];;", "Cellule;L1;L2;L3;L1;L2;L3"],
  [";Closing time, ms;;;Opening time, ms;;", "Cubicle;A;B;C;A;B;C"],
  ["Celda;Cierre (ms);;;Apertura (ms);;", ";L1;L2;L3;L1;L2;L3"],
])("poles under two groups in milliseconds, over the panels nothing: %s", (groups, titles) => {
  const found = placed("tempi.csv", [
    "Breakers (made up);;;;;;;",
    "",
    groups,
    titles,
    "52-F1;53,8;53,7;53,3;34,8;35,4;34,9",
    "52-F2;57,4;57,9;58,2;32,5;33,2;32,7",
  ]);
  expect(found).toContain("timing 52-F1 Breaker 52 closing l3=53.3");
  expect(found).toContain("timing 52-F2 Breaker 52 opening l1=32.5");
  expect(found).toHaveLength(12);
});

test.each([
  ["Panel;Relay;Stage;Point;Measured;Trips and shows", "51", "50", 10],
  ["Feld;Relais;Stufe;Punkt;Gemessen;Anzeige", "51", "50", 10],
  ["Celda;Relé;Etapa;Punto;Medido;Disparo", "51", "50", 10],
  ["Panel;Relay;Stage;Point;Measured;Trips and shows", "1", "2", 0],
])("device numbers as the stages of a relay: %s, %s", (titles, slow, fast, readings) => {
  const found = placedInto(sampleBook("harbour-substation"))("relay.csv", [
    "Secondary injection (made up)",
    titles,
    `=H01;F1;${slow};Pick-up;1.007 A;yes`,
    `=H01;F1;${fast};Pick-up;8.02 A;yes`,
    `=H02;F1;${slow};Pick-up;0.81 A;yes`,
    `=H02;F1;${fast};Pick-up;6.02 A;yes`,
    `=H03;F1;${slow};Pick-up;0.80 A;yes`,
  ]);
  if (readings > 0) expect(found).toContain("protection =H01 F1 50 Pick-up reading=8.02");
  expect(found).toHaveLength(readings);
});

test.each([
  ["Circuiti amperometrici", "Circuiti voltmetrici"],
  ["Circuitos amperimétricos", "Circuitos de tensión"],
  ["Circuits intensité", "Circuits tension"],
  ["Strompfade", "Spannungspfade"],
  ["Stromwandlerkreise", "Spannungswandlerkreise"],
])("circuits of currents and of voltages, which a panel may not have: %s, %s", (amperes, volts) => {
  const found = placed("control.csv", [
    "Control wiring insulation, 500 V DC (made up)",
    "Cubicle,Circuit,MΩ",
    `52-M1,${amperes},520`,
    `52-M1,${volts},830`,
    // No voltage transformers there.
    `52-F1,${volts},840`,
    "52-F1,Closing,850",
  ]);
  expect(found).toContain("control 52-M1 Current circuits reading=520");
  expect(found).toContain("control 52-M1 Voltage circuits reading=830");
  expect(found.filter((one) => one.includes("reading"))).toHaveLength(3);
});

test.each([
  ["V;mA", "Panel =H01, core 2S1-2S2, phase L1", "Panel =H01, core 2S1-2S2, phase L2"],
  [
    "Volt (V);mA",
    "Panel:;=H01\nCT core:;2S1-2S2\nPhase:;L1",
    "Panel:;=H01\nCT core:;2S1-2S2\nPhase:;L2",
  ],
])(
  "points of curves in two columns, each core named above its own: %s",
  (titles, first, second) => {
    const points = ["20;1.5", "60;4.1", "120;9.8"];
    const found = placedInto(sampleBook("harbour-substation"))("curves.csv", [
      "Excitation curves (made up)",
      "",
      ...first.split("\n"),
      titles,
      ...points,
      "",
      ...second.split("\n"),
      titles,
      ...points,
    ]);
    expect(found).toHaveLength(12);
    expect(found).toContain("excitation =H01 2S1-2S2 L1 v1=20");
    expect(found).toContain("excitation =H01 2S1-2S2 L2 a3=0.0098");
  },
);

test("of a relay's readings as found and as left, the last is the record's", () => {
  const found = placed("relays.csv", [
    "Cubicle,Device,Element,Test,As found,As left,Unit",
    "52-F1,11-F1,51P,Pickup,4.21,4.02,A",
    "52-F2,11-F2,51P,Pickup,4.35,4.01,A",
  ]);
  expect(found).toEqual([
    "protection 52-F1 11-F1 51P Pick-up reading=4.02",
    "protection 52-F2 11-F2 51P Pick-up reading=4.01",
  ]);
});

test.each([
  ["Cubicle,A,B,C", "All readings in micro-ohms at 100 A DC."],
  ["Feld,A,B,C", "Alle Werte in µΩ bei 100 A DC"],
  ["Cubículo,A,B,C", "Todos os valores em µΩ a 100 A CC"],
])("a note under the readings says the unit of all: %s", (titles, note) => {
  const lines = ["52-F1,41,42,40", "52-F2,43,41,42"];
  const found = placed("ductor.csv", ["Breaker contacts (made up)", titles, ...lines, "", note]);
  expect(found).toContain("contact 52-F1 Breaker 52 A reading=41");
  expect(found).toContain("contact 52-F2 Breaker 52 C reading=42");
  expect(found).toContain("contact 52-F2 Breaker 52 C testCurrent=100");
  // Without it, nothing is guessed.
  expect(placed("ductor.csv", ["Breaker contacts (made up)", titles, ...lines])).toEqual([]);
});

test("a note over a further table is not of the readings above it", () => {
  const found = placed("ductor.csv", [
    "Breaker contacts (made up)",
    "Cubicle,A,B,C",
    "52-F1,41,42,40",
    "All readings in micro-ohms",
    "Breaker,A,B,C,Date",
    "52-F2,43,41,42,3/18/2026",
  ]);
  expect(found.filter((one) => one.includes("52-F1"))).toEqual([]);
});
