import { analyse } from "scslre";
import { afterEach, beforeEach, expect, test } from "vitest";
import { openBook } from "../../src/intake/openBook";
import { takeIn } from "../../src/intake/takeIn";
import { messagesFor } from "../../src/messages/messages";
import { readLineup } from "../../src/records/readLineup";
import { planFor } from "../../src/sheets/plan/plan";
import type { Snapshot } from "../../src/sheets/snapshot";
import { checkSurvey } from "../../src/survey/checkSurvey";
import { longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

/**
 * Patterns that take longer than in proportion to the length of what they read are given short texts alone.
 * No clock is asked: every pattern that a long text reaches is looked at (scslre), wherever it is written.
 */
const LONG = 1_000;
/** More than any text that a slow pattern may be given. */
const LENGTH = 2_000;

/** What the long texts are made of: what patterns repeat. */
const PIECES = [" ", "0", "(", "[", "a", "A", ",", "-", ":", "1 ", "a1", "1.", "kV ", "L1/"];
const LONG_TEXTS = PIECES.map((piece) => `${piece.repeat(LENGTH / piece.length)}x`);

const slow = new Map<string, boolean>();
/** Whether a pattern is slow: it may part what it reads in more than one way before it fails. */
function isSlow({ source, flags }: RegExp): boolean {
  const key = `/${source}/${flags}`;
  const known = slow.get(key);
  if (known !== undefined) return known;
  const { reports } = analyse(
    { source, flags: flags.replace(/[dv]/g, "") },
    { assumeRejectingSuffix: false },
  );
  slow.set(key, reports.length > 0);
  return reports.length > 0;
}

const plainExec = RegExp.prototype.exec;
let found = new Set<string>();
beforeEach(() => {
  found = new Set();
  const looking = new Set<string>();
  RegExp.prototype.exec = function exec(text) {
    const key = `/${this.source}/${this.flags}`;
    if (String(text).length > LONG && !looking.has(key)) {
      looking.add(key);
      RegExp.prototype.exec = plainExec;
      if (isSlow(this)) found.add(key);
      RegExp.prototype.exec = exec;
    }
    return plainExec.call(this, text);
  };
});
afterEach(() => {
  RegExp.prototype.exec = plainExec;
});

const csv = (text: string) => `"${text.replaceAll('"', '""')}"`;
const lineup = longLineup(2);
const HEAD = "Panel,Part,Pole,R (µΩ),Remarks";
const EXPORTS: Readonly<Record<string, (text: string) => string>> = {
  title: (text) =>
    `Panel,Part,Pole,${csv(`R ${text}`)}\n=K0001,Breaker Q0,L1,31.5\n=K0001,Breaker Q0,L2,32`,
  heading: (text) =>
    `${csv(`Contact ${text}`)}\n${HEAD}\n=K0001,Breaker Q0,L1,31.5,dry\n=K0001,Breaker Q0,L2,32,dry`,
  fact: (text) =>
    `Tested by ${csv(text)}\nSerial: ${csv(text)}\n${HEAD}\n=K0001,Breaker Q0,L1,31.5,dry\n=K0001,Breaker Q0,L2,32,dry`,
  value: (text) =>
    `${HEAD}\n=K0001,Breaker Q0,L1,${csv(`31${text}`)},dry\n=K0001,Breaker Q0,L2,32,dry`,
  names: (text) =>
    `${HEAD}\n${csv(`=K0001${text}`)},${csv(text)},${csv(`L1${text}`)},31.5,dry\n=K0001,Breaker Q0,L2,32,dry`,
  remark: (text) =>
    `${HEAD}\n=K0001,Breaker Q0,L1,31.5,${csv(`dry ${text}`)}\n=K0001,Breaker Q0,L2,32,dry`,
};

test.each(Object.entries(EXPORTS))("an export with a long %s", (_what, make) => {
  const book = openBook(memoryBook(planFor(lineup)).snapshot);
  for (const text of LONG_TEXTS)
    takeIn(book, [{ name: "a.csv", content: make(text) }], { replace: true }, 46_351);
  expect([...found]).toEqual([]);
});

const sheet = (rows: readonly (readonly string[])[]): Snapshot => ({
  sheets: [
    {
      name: "A",
      tables: [],
      cells: {
        rowCount: rows.length,
        columnCount: Math.max(...rows.map(({ length }) => length)),
        cell: (row, column) => rows[row]?.[column] ?? null,
        formula: () => undefined,
      },
    },
  ],
});
const LINES = ["500", "510", "520", "530"].map((value, at) => [
  `H0${at + 1}`,
  value,
  "540",
  "550",
  "Pass",
]);
const TITLES = ["Cubicle", "L1-E (MΩ)", "L2-E (MΩ)", "L3-E (MΩ)", "Result"];
const SHEETS: Readonly<Record<string, (text: string) => readonly (readonly string[])[]>> = {
  title: (text) => [
    ["Insulation resistance"],
    [],
    ["Cubicle", `L1-E ${text}`, ...TITLES.slice(2)],
    ...LINES,
  ],
  heading: (text) => [[`Insulation resistance ${text}`], [`${text}:`, "5 kV"], TITLES, ...LINES],
  value: (text) => [
    ["Insulation resistance"],
    [],
    TITLES,
    ...LINES,
    [`H05${text}`, `500${text}`, text, "540", text],
  ],
};

test.each(Object.entries(SHEETS))("a sheet that is surveyed, with a long %s", (_what, make) => {
  for (const text of LONG_TEXTS)
    checkSurvey(sheet(make(text)), 46_400, {}, messagesFor("en").survey);
  expect([...found]).toEqual([]);
});

test("a lineup with long texts", () => {
  for (const text of LONG_TEXTS) {
    const [panel] = lineup.panels;
    readLineup(JSON.stringify({ ...lineup, panels: [{ ...panel, designation: text }] }));
    readLineup(
      JSON.stringify({ ...lineup, instruments: [{ id: text, kind: text, serial: text }] }),
    );
    readLineup(JSON.stringify({ ...lineup, criteria: [{ quantity: text, value: 1, from: text }] }));
  }
  expect([...found]).toEqual([]);
});
