import { expect, test } from "vitest";
import { checkItem } from "../../src/intake/words/checkItem";
import { CHECK_ITEMS } from "../../src/intake/words/languages/checkItems";
import { book, placed } from "../support/mesaIntake";

/** Lists of checks in other languages than the records (all invented; the wording is from memory). */

const STATES = ["OK", "Not OK"];

test.each([
  [
    "Lista de control del montaje",
    "Punto de control",
    ["sí", "no"],
    "Anclada a la cimentación",
    "Calefacción y alumbrado montados",
    "Puertas, cerraduras y manetas funcionan",
    "Limpia y seca",
  ],
  [
    "Lista de verificação da montagem",
    "Item de verificação",
    ["sim", "não"],
    "Fixado à base",
    "Aquecimento e iluminação instalados",
    "Portas e fechaduras funcionam bem",
    "Cubículo limpo e seco",
  ],
  [
    "Lista di montaggio",
    "Punto di controllo",
    ["sì", "no"],
    "Fissato al basamento",
    "Riscaldamento e illuminazione montati",
    "Porte, serrature e maniglie funzionano",
    "Pulito e asciutto",
  ],
  [
    "Liste de contrôle du montage",
    "Point de contrôle",
    ["oui", "non"],
    "Cellule fixée au massif",
    "Chauffage et éclairage posés",
    "Les portes, serrures et poignées fonctionnent",
    "Propre et sèche",
  ],
  [
    "Montagekontrolle",
    "Prüfpunkt",
    ["ja", "nein"],
    "Auf dem Fundament verankert",
    "Heizung und Beleuchtung eingebaut",
    "Türen, Schlösser und Griffe gängig",
    "Sauber und trocken",
  ],
])("%s: items down, panels across", (heading, title, [yes = "", no = ""], ...items) => {
  const answers = [
    [yes, yes],
    [yes, yes],
    [yes, no],
    [no, yes],
  ];
  const found = placed("list.csv", [
    `${heading};;`,
    "",
    `${title};52-F1;52-F2`,
    ...items.map((item, at) => [item, ...(answers[at] ?? [])].join(";")),
  ]);
  const expected = [
    ["Anchored to the foundation", 0, 0],
    ["Heaters and lighting fitted", 0, 0],
    ["Doors, locks and handles work", 0, 1],
    ["Clean and dry", 1, 0],
  ].flatMap(([item, ...states]) =>
    states.map((state, at) => `installation 52-F${at + 1} ${item} state=${STATES[Number(state)]}`),
  );
  expect(found).toEqual(expected.sort());
});

test("a text that says half of an item, more than it, or the contrary is none", () => {
  for (const text of [
    "Limpia",
    "Limpia y sin secar",
    "Compartimiento de cables limpio y seco",
    "Embalaje retirado",
    "Heizung montiert",
    "Türen und Schlösser nicht gängig",
    "Werkzeug entfernt",
    "Nivelado y unido con puesta a tierra",
    "Porte serratura",
  ])
    expect(checkItem(text), text).toBeUndefined();
});

test("every item that has names in other languages is one of the installation or a dimension", () => {
  const of = book.tables.filter(({ kind }) => ["installation", "dimensions"].includes(kind.id));
  const items = new Set(of.flatMap(({ rows }) => rows.map(({ part }) => part)));
  for (const item of CHECK_ITEMS.flatMap(Object.keys)) expect(items).toContain(item);
});
