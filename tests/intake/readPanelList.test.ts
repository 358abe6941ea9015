import { expect, test } from "vitest";
import { readPanelList } from "../../src/intake/readPanelList";
import { inWords } from "../support/inWords";

test("a schedule with titles, in any order", () => {
  const { panels, problems } = readPanelList(
    [
      "Bus\tPanel\tDuty\tDescription\tIn A\tBreaker",
      "Bus A\t=H01\tIncoming\tIncomer 1\t2000\tVacuum",
      "\t=H02\tOutgoing\tPumps\t630\tSF6",
      "\t=H03\tVT\tMeasuring\t\t-",
      "Bus B\t=H04\tBus tie\t\t2000\tvacuum",
    ].join("\n"),
  );
  expect(problems).toEqual([]);
  expect(panels).toEqual([
    {
      designation: "=H01",
      name: "Incomer 1",
      type: "incomer",
      section: "Bus A",
      breaker: { medium: "vacuum", ratedA: 2000 },
    },
    {
      designation: "=H02",
      name: "Pumps",
      type: "feeder",
      section: "Bus A",
      breaker: { medium: "SF6", ratedA: 630 },
    },
    { designation: "=H03", name: "Measuring", type: "metering", section: "Bus A" },
    {
      designation: "=H04",
      type: "bus coupler",
      section: "Bus B",
      breaker: { medium: "vacuum", ratedA: 2000 },
    },
  ]);
});

test("a list without titles stands in the stated order", () => {
  expect(readPanelList("K1;Incomer 1;incomer;A;vacuum;1,6 kA\nK2").panels).toEqual([
    {
      designation: "K1",
      name: "Incomer 1",
      type: "incomer",
      section: "A",
      breaker: { medium: "vacuum", ratedA: 1600 },
    },
    { designation: "K2", type: "feeder", section: "A" },
  ]);
});

test("lines that are no panel are said with their number, and what would be right", () => {
  const { panels, problems } = readPanelList(
    "Panel,Type,Breaker,Rated A\n=H01,windmill,,\n=H02,feeder,oil,630\n=H03,feeder,vacuum,lots\n,feeder,,\n=H05,feeder,,",
  );
  expect(panels.map(({ designation }) => designation)).toEqual(["=H05"]);
  expect(inWords(problems).map(({ line, message }) => `${line}: ${message}`)).toEqual([
    expect.stringMatching(/^2: Unknown type of panel "windmill"; use one of incomer, /),
    expect.stringMatching(/^3: Unknown breaker medium "oil"; use vacuum or SF6/),
    expect.stringMatching(/^4: rated current of the breaker: "lots" is not a reading/),
    expect.stringMatching(/^5: no designation/),
  ]);
});

test("a list whose titles name no panel is refused", () => {
  expect(inWords(readPanelList("Type\tSection\nfeeder\tBus A").problems)).toEqual([
    {
      line: 1,
      message:
        'no column is titled "Panel"; give the column of designations that title, or say which column it is',
    },
  ]);
});

test.each([
  [
    "German",
    "Feld\tAbgang\tFeldart\tAbschnitt\tSchalter\tLöschmittel\tBemessungsstrom\nJ01\tEinspeisung 1\tEinspeisefeld\tA\t-Q01\tVakuum\t2500 A",
  ],
  [
    "Spanish",
    "Celda;Circuito;Tipo;Barra;Interruptor;Medio de corte;Corriente asignada\nJ01;Einspeisung 1;Acometida;A;-Q01;Vacío;2,5 kA",
  ],
  [
    "French",
    "Repère\tLibellé\tType de cellule\tJeu de barres\tDisjoncteur\tMilieu de coupure\tCourant assigné\nJ01\tEinspeisung 1\tArrivée\tA\t-Q01\tVide\t2500",
  ],
  [
    "Portuguese",
    "Painel\tCircuito\tFunção\tBarramento\tDisjuntor\tMeio de corte\tCorrente nominal\nJ01\tEinspeisung 1\tEntrada\tA\t-Q01\tVácuo\t2500",
  ],
])("a schedule in %s, with the breakers' designations", (_language, list) => {
  expect(readPanelList(list)).toEqual({
    panels: [
      {
        designation: "J01",
        name: "Einspeisung 1",
        type: "incomer",
        section: "A",
        breaker: { designation: "-Q01", medium: "vacuum", ratedA: 2500 },
      },
    ],
    problems: [],
    unknown: [],
    asksMedium: false,
  });
});

test("a column titled Breaker is told by its cells", () => {
  const breakers = (list: string) => readPanelList(list, { medium: "SF6" }).panels[0]?.breaker;
  expect(breakers("Panel\tBreaker\tIn A\nK1\tVacuum\t630")).toEqual({
    medium: "vacuum",
    ratedA: 630,
  });
  expect(breakers("Panel\tBreaker\tIn A\nK1\t52-1\t630")).toEqual({
    designation: "52-1",
    medium: "SF6",
    ratedA: 630,
  });
});

test("a column whose title tells nothing is asked for, and taken as answered", () => {
  const list = "Panel\tBay\tDuty\nK1\tPumps\tfeeder\nK2\t\tmotor";
  const asked = readPanelList(list);
  expect(asked.unknown).toEqual([{ title: "Bay", sample: "Pumps" }]);
  expect(asked.panels[0]).toEqual({ designation: "K1", type: "feeder", section: "Bus A" });
  const told = readPanelList(list, { columns: { Bay: "name" } });
  expect(told.panels[0]?.name).toBe("Pumps");
  // It stays among what was asked, so that the answer can be changed.
  expect(told.unknown).toEqual(asked.unknown);
  const foreign = "Kenttä;Lähtö\nK1;Pumput 1\nK2;Pumput 2";
  expect(readPanelList(foreign).panels).toEqual([]);
  expect(readPanelList(foreign).unknown.map(({ title }) => title)).toEqual(["Kenttä", "Lähtö"]);
  expect(
    readPanelList(foreign, { columns: { Kenttä: "designation", Lähtö: "spare" } }).panels.map(
      ({ designation }) => designation,
    ),
  ).toEqual(["K1", "K2"]);
});

test("a breaker whose medium is not said is no panel until it is", () => {
  const list = "Panel\tRating\nK1\t1200\nK2\t-";
  const read = readPanelList(list);
  expect(read.asksMedium).toBe(true);
  expect(inWords(read.problems)).toEqual([
    { line: 2, message: expect.stringMatching(/^a breaker without its medium; write vacuum or/) },
  ]);
  expect(readPanelList(list, { medium: "vacuum" }).panels).toEqual([
    {
      designation: "K1",
      type: "feeder",
      section: "Bus A",
      breaker: { medium: "vacuum", ratedA: 1200 },
    },
    { designation: "K2", type: "feeder", section: "Bus A" },
  ]);
});

test("the longer word for a type is meant, and two panels of one name are told at their line", () => {
  const { panels, problems } = readPanelList(
    "Panel,Type\nK1,Transformer feeder TR1\nK2,Motorabgangsfeld\nK1,feeder",
  );
  expect(panels.map(({ type }) => type)).toEqual(["transformer feeder", "motor feeder"]);
  expect(inWords(problems)).toEqual([
    { line: 4, message: expect.stringMatching(/^"K1" stands on line 2 as well/) },
  ]);
});
