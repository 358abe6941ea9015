import { filledPlan, SOUND } from "../../support/fill";
import { longLineup } from "../../support/lineups";
import { type MemoryBook, memoryBook } from "../../support/memoryBook";
import { finds, keepsQuiet, rowOf } from "../support";

const MOTION = "GearMotion";

const rowAt = (one: MemoryBook, at: number, quantity: string) =>
  rowOf(one, MOTION, `=K000${at + 1}`, quantity);
const set = (one: MemoryBook, at: number, closing: number, opening: number) => {
  one.set(MOTION, rowAt(one, at, "closing speed"), "Measured", closing);
  one.set(MOTION, rowAt(one, at, "opening speed"), "Measured", opening);
};

/** Breakers of one make, or each of its own, that close at about 0.95 m/s and open at about 1.2 m/s. */
const book =
  (panels = 6, isMixed = false) =>
  () => {
    const lineup = longLineup(panels);
    const one = memoryBook(
      filledPlan(
        {
          ...lineup,
          panels: lineup.panels.map((panel, at) => ({
            ...panel,
            motion: [
              { quantity: "closing speed m/s", least: isMixed ? 0.1 + at / 100 : 0.6, most: 1.4 },
              { quantity: "opening speed m/s", least: 0.7, most: 1.6 },
            ],
          })),
        },
        11,
        SOUND,
      ),
    );
    for (let at = 0; at < panels; at++) set(one, at, 0.95 + (at % 3) / 100, 1.2 - (at % 2) / 100);
    return one;
  };

finds("against-siblings", [
  {
    name: "speeds of closing and opening exchanged, both within their limits",
    spoil: (one) => set(one, 3, 1.2, 0.95),
    table: MOTION,
    row: rowAt(book()(), 3, "closing speed"),
    header: "Measured",
    weight: "query",
    says: /closing speed 1.2 and opening speed 0.95 .* the other way round than in all of 5 others/,
    book: book(),
  },
]);

keepsQuiet("against-siblings", [
  ["fewer than five breakers", (one) => set(one, 3, 1.2, 0.95), book(4)],
  ["breakers of other limits", (one) => set(one, 3, 1.2, 0.95), book(6, true)],
  [
    "breakers that have no order",
    (one) => {
      for (let at = 0; at < 6; at++) set(one, at, 1 + at / 50, 1.1 - at / 100);
    },
    book(),
  ],
  ["two that stand alike within a few per cent", (one) => set(one, 3, 1.21, 1.2), book()],
]);
