import { expect, test } from "vitest";
import { knowledgeOf } from "../../src/intake/understand/knowledge";
import { placesNamed } from "../../src/intake/understand/places";
import { book, placed } from "../support/mesaIntake";

/** Ways to lay exports out that a later hand had, each told in other words here (all invented), into the sample lineup by American practice. */

const of = (found: readonly string[], column: string) =>
  found.filter((one) => one.includes(` ${column}=`));

test.each([
  ["Essai", "A-terre", "B-terre", "C-terre", "A-B"],
  ["Measurement", "A to gnd", "B to gnd", "C to gnd", "A to B"],
  ["Ensayo", "A - tierra", "B - tierra", "C - tierra", "A - B"],
])("phases under the title of a test are no tests of earthing: %s", (title, ...phases) => {
  const found = placed("ir.csv", [
    "Insulation before hipot (made up)",
    `Panel;${title};Megohms, 1 min`,
    ...phases.map((phase, at) => `Bus 1;${phase};${40_000 + 700 * at}`),
  ]);
  expect(of(found, "reading")).toEqual([
    "insulation Bus 1 Busbar A-B before reading=42100",
    "insulation Bus 1 Busbar A-E before reading=40000",
    "insulation Bus 1 Busbar B-E before reading=40700",
    "insulation Bus 1 Busbar C-E before reading=41400",
  ]);
});

test.each(["Date:,4/23/26", "Tested on 04/23/2026"])(
  "a day with the month first says that the comma parts thousands: %s",
  (day) => {
    const found = placed("ir.csv", [
      "Insulation before hipot (made up)",
      day,
      "",
      "Panel,Phase,Megohms",
      'Bus 1,A-G,"39,300"',
      'Bus 1,B-G,"34,800"',
    ]);
    expect(of(found, "reading")).toEqual([
      "insulation Bus 1 Busbar A-E before reading=39300",
      "insulation Bus 1 Busbar B-E before reading=34800",
    ]);
  },
);

test("a day with the day first leaves it open", () => {
  const found = placed("ir.csv", [
    "Insulation before hipot (made up)",
    "Date:,23/04/2026",
    "",
    "Panel,Phase,Megohms",
    'Bus 1,A-G,"39,300"',
    'Bus 1,B-G,"34,800"',
  ]);
  expect(of(found, "reading")).toEqual([]);
});

test.each([
  ["Error (%)", "+0.28", "-0.32", "2.517", "=2.517"],
  ["Limit (A)", "5.05", "5.05", "2.517", "=2.517"],
  ["Fehler %", "0,28", "-0,32", "2,517", "=2.517"],
  ["Version", "1.2", "1.2", "2.517", undefined],
])("figures beside the readings show the decimal mark: %s", (title, one, two, secondary, read) => {
  const found = placed("ct.csv", [
    "CT ratio (made up)",
    `Panel;CT;Phase;Primary (A);Secondary (A);${title}`,
    `52-F1;CT-1;A;303;${secondary};${one}`,
    `52-F1;CT-1;B;300;${secondary};${two}`,
  ]);
  const values = of(found, "secondary").map((text) => text.replace(/.*(?==)/, ""));
  expect(values).toEqual(read === undefined ? [] : [read, read]);
});

test.each([
  [["Phase;kV;s;mA", "Bus 1", "A;27.1;60;1.4", "B;27.0;60;1.5", "52-F1", "A;27.2;60;1.6"]],
  [
    [
      "Fase;kV;s;mA",
      "Bus 1 (barras)",
      "A;27.1;60;1.4",
      "B;27.0;60;1.5",
      "52-F1 - bombas",
      "A;27.2;60;1.6",
    ],
  ],
])("a panel alone on a line holds for the lines below it", (lines) => {
  const found = placed("hipot.csv", ["AC hipot (made up)", "", ...lines]);
  expect(of(found, "current")).toEqual([
    "withstand 52-F1 Circuit A current=1.6",
    "withstand Bus 1 Busbar A current=1.4",
    "withstand Bus 1 Busbar B current=1.5",
  ]);
});

test("below the name of a panel that the records do not know nothing is the last one's", () => {
  const found = placed("hipot.csv", [
    "AC hipot (made up)",
    "",
    "Phase;kV;s;mA",
    "52-F1",
    "A;27.1;60;1.4",
    "52-F77",
    "A;27.2;60;1.6",
  ]);
  expect(of(found, "current")).toEqual(["withstand 52-F1 Circuit A current=1.4"]);
});

test.each(["Item", "Pos", "N°", "Ítem"])("lines numbered under %s are no parts", (title) => {
  const found = placed("contact.csv", [
    "Main contacts, breakers (made up)",
    `${title};Panel;Pole;Measured (µΩ);Limit (µΩ)`,
    "1;52-F1;A;38.5;45",
    "2;52-F1;B;39.5;45",
    "3;52-F1;C;38.0;45",
  ]);
  expect(of(found, "reading")).toHaveLength(3);
});

test.each([
  ["Panel;Pickup A;2x s;Pickup A", "52-F1;4.02;19.2;30.3"],
  ["Feld;Ansprechwert A;2x s;Ansprechwert A", "52-F1;4.02;19.2;30.3"],
])("elements of a relay over the titles: %s", (titles, line) => {
  const found = placed("relays.csv", [
    "Relays, secondary injection (made up)",
    "",
    ";51P;51P;50P",
    titles,
    line,
  ]);
  const readings = of(found, "reading");
  expect(readings).toContain("protection 52-F1 11-F1 51P Pick-up reading=4.02");
  expect(readings).toContain("protection 52-F1 11-F1 50P Pick-up reading=30.3");
  expect(readings).toContain("protection 52-F1 11-F1 51P 2 × pick-up reading=19.2");
});

/** What each part of the records is called in other words (from memory, common practice). */
const CALLED: readonly (readonly [kind: string, part: RegExp, names: string])[] = [
  [
    "torque",
    /^Main bus splice$/,
    "bus splices, Sammelschienenverbindung, éclissage des barres, unión de barras, emenda de barramento, giunzione sbarre, وصلات القضبان",
  ],
  [
    "torque",
    /^(?:Ground bus|Earth bar)$/,
    "PE bar, Schutzleiterschiene, Erdungssammelschiene, barre de terre, pletina de tierra, barra de puesta a tierra, barra de aterramento, barra di terra, قضيب التأريض",
  ],
  [
    "torque",
    /^Cable (?:terminations|lugs)$/,
    "cable ends, Kabelanschlüsse, têtes de câbles, botellas terminales, ligação dos cabos, capicorda cavi, أطراف الكابلات",
  ],
  [
    "earthing",
    / frame$/,
    "CB truck, Schalterrahmen, châssis disjoncteur, carro interruptor, chassi do disjuntor, telaio dell'interruttore, إطار القاطع",
  ],
  [
    "contact",
    /^Breaker /,
    "breaker poles, Hauptkontakte, pôles du disjoncteur, polos del interruptor, contactos principais, poli interruttore, ملامسات القاطع",
  ],
  [
    "control",
    /^Closing$/,
    "close ckt, Einschaltspule, bobine de fermeture, circuito de cierre, circuito de fecho, circuito di chiusura, ملف الإغلاق",
  ],
  [
    "control",
    /^Spring charging$/,
    "chg motor, Federspannmotor, moteur d'armement, motor de carga, carga de molas, motore carica molle, محرك شحن النابض",
  ],
  [
    "control",
    /^Heating and lighting$/,
    "htr & lts, Heizung/Licht, chauffage/éclairage, calentadores, aquecimento e iluminação, resistenza anticondensa, سخانات",
  ],
];

test.each(
  CALLED.flatMap(([kind, part, names]) =>
    names.split(", ").map((name) => [kind, name, part] as const),
  ),
)("%s: %s", (id, name, part) => {
  const knows = knowledgeOf(book.tables, { panels: book.lineup?.panels ?? [] });
  const places = knows.kinds.find(({ kind }) => kind.id === id)?.places ?? [];
  const found = placesNamed(placesNamed(places, "52-F1"), name);
  expect([...new Set(found.map((place) => place.part))]).toEqual([expect.stringMatching(part)]);
});
