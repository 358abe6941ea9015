import { expect, test } from "vitest";
import { placed } from "../support/mesaIntake";

/** Breaker, operation and pole in one cell, in sample lineup by American practice (all invented). */

const TIMES = [
  "timing 52-F3 Breaker 52 closing l1=61.2",
  "timing 52-F3 Breaker 52 closing l2=61.5",
  "timing 52-F3 Breaker 52 closing l3=61.1",
  "timing 52-F3 Breaker 52 opening l1=33.1",
  "timing 52-F3 Breaker 52 opening l2=33.3",
  "timing 52-F3 Breaker 52 opening l3=33.2",
];
const READ = ["61.2", "61.5", "61.1", "33.1", "33.3", "33.2"];

test.each([
  [
    "Item;Time (ms)",
    ...["52-F3 close A", "52-F3 close B", "52-F3 close C"],
    ...["52-F3 trip A", "52-F3 trip B", "52-F3 trip C"],
  ],
  [
    "Mesure;ms",
    ...["52-F3 - fermeture - pôle A", "52-F3 - fermeture - pôle B", "52-F3 - fermeture - pôle C"],
    ...["52-F3 - ouverture - pôle A", "52-F3 - ouverture - pôle B", "52-F3 - ouverture - pôle C"],
  ],
  [
    "Messung;ms",
    "L1 Ein 52-F3",
    "L2 Ein 52-F3",
    "L3 Ein 52-F3",
    "L1 Aus 52-F3",
    "L2 Aus 52-F3",
    "L3 Aus 52-F3",
  ],
  [
    "Disjuntor;ms",
    "52-F3/fecho/L1",
    "52-F3/fecho/L2",
    "52-F3/fecho/L3",
    "52-F3/abertura/L1",
    "52-F3/abertura/L2",
    "52-F3/abertura/L3",
  ],
])("breaker, operation and pole in one cell: %s", (titles, ...names) => {
  expect(placed("times.csv", [titles, ...names.map((name, at) => `${name};${READ[at]}`)])).toEqual(
    TIMES,
  );
});

test("a pole that is closed or open is none of a test without operations", () => {
  const found = placed("ir.csv", [
    "Point;MΩ",
    "52-F1 closed A-G;6100",
    "52-F1 closed B-G;6150",
    "52-F1 open A;7100",
    "52-F1 open B;7200",
  ]);
  expect(found).toEqual([]);
});

test("an operation on some lines only parts none of them", () => {
  const found = placed("times.csv", [
    "Item;Time (ms)",
    "52-F3 close A;61.2",
    "52-F3 close B;61.5",
    "52-F3 A;33.1",
    "52-F3 B;33.3",
  ]);
  expect(found).toEqual([]);
});
