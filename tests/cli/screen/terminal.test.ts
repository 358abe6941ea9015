import { expect, test } from "vitest";
import type { Finding } from "../../../src/check/findings/finding";
import { findingList } from "../../../src/cli/screen/findingList";
import { matrixTable } from "../../../src/cli/screen/matrixTable";
import { PAGE, screenOf, wrap } from "../../../src/cli/screen/screen";
import { commandLineFor } from "../../../src/messages/commandLine";
import { INSULATION, reportOf, rowOf, sound, soundOf } from "../../check/support";

const text = commandLineFor("en").check;
const widest = (told: string) => Math.max(...told.split("\n").map(({ length }) => length));

test("where every row passes, the record kinds are named and the panels counted", () => {
  const told = matrixTable(reportOf(sound().snapshot), text, PAGE);
  expect(told).toMatch(/^Every row passes: Documents,[^.]* Insulation,/);
  expect(told).toMatch(/panels and sections pass in every row\.$/);
  expect(widest(told)).toBeLessThanOrEqual(80);
});

test("of many panels those that ask for something stand across, the records that ask down", () => {
  const book = soundOf(50);
  book.set(INSULATION, rowOf(book, INSULATION, "=K0017", "before"), "R 1 min MΩ", null);
  const lines = matrixTable(reportOf(book.snapshot), text, PAGE).split("\n");
  expect(lines[0]?.trim()).toBe("=K0017");
  expect(lines[1]).toMatch(/^Insulation +1M$/);
  expect(lines.at(-1)).toMatch(/^55 panels and sections pass in every row\.$/);
});

test("more panels than the screen has room for stand in groups, very many as counts", () => {
  const book = soundOf(40);
  const faulty = (from: number, to: number) => {
    for (let at = from; at <= to; at++) {
      const name = `=K${String(at).padStart(4, "0")}`;
      book.set(INSULATION, rowOf(book, INSULATION, name, "before"), "R 1 min MΩ", null);
    }
    return matrixTable(reportOf(book.snapshot), text, PAGE);
  };
  const grouped = faulty(1, 14);
  expect(grouped.match(/^Insulation/gm)).toHaveLength(2);
  expect(widest(grouped)).toBeLessThanOrEqual(80);
  const counted = faulty(15, 40);
  expect(counted).toMatch(/^ +fail +missing +inconclusive +open +pass$/m);
  expect(counted).toMatch(/^Insulation +40 +\d+$/m);
  expect(counted).toContain("40 panels and sections ask for something: =K0001");
  expect(widest(counted)).toBeLessThanOrEqual(80);
});

const finding = (rule: string, at: number, words: string): Finding => ({
  rule,
  weight: "stop",
  sheet: "Sheet",
  address: `B${at}`,
  row: `row ${at}`,
  message: `row ${at}: ${words}`,
});
const listed = (findings: readonly Finding[], all = false) =>
  findingList(findings, text, PAGE, { titleOf: (rule) => `About ${rule}`, all });

test("findings are gathered by cause, of each the first three; what says the same of many rows is said once", () => {
  const wide = { width: 100, colours: false };
  const findings = [
    ...[1, 2, 3, 4, 5].map((at) => finding("one", at, `differs by ${at}.`)),
    ...[1, 2, 3, 4, 5].map((at) => finding("two", at, "no limit.")),
  ];
  const told = findingList(findings, text, wide, {
    titleOf: (rule) => `About ${rule}`,
    all: false,
  });
  expect(told.split("\n").map((line) => line.trim().replace(/ {2,}/g, " | "))).toEqual([
    "stop | About one (5)",
    "Sheet!B1 | row 1: differs by 1.",
    "Sheet!B2 | row 2: differs by 2.",
    "Sheet!B3 | row 3: differs by 3.",
    "and 2 more (all with --all)",
    "stop | About two (5)",
    "Sheet!B1 | row 1: no limit. The same of 4 more rows, at B2, B3, B4 and so on.",
  ]);
});

test("--all tells every finding, each at its cell", () => {
  const told = listed(
    [1, 2, 3, 4, 5].map((at) => finding("two", at, "no limit.")),
    true,
  );
  expect(told.match(/Sheet!B\d/g)).toHaveLength(5);
  expect(told).not.toContain("--all");
});

test("long words go on under themselves, within the width", () => {
  const told = listed([finding("one", 1, "many words ".repeat(30))]);
  expect(widest(told)).toBeLessThanOrEqual(80);
  expect(told.split("\n").length).toBeGreaterThan(5);
  expect(wrap("one two three", 9, "  ")).toBe("  one two\n  three");
});

test("colours are there where the terminal has them, and only there", () => {
  const told = (colours: boolean) =>
    findingList(
      [finding("one", 1, "words.")],
      text,
      { width: 80, colours },
      {
        titleOf: (rule) => rule,
        all: false,
      },
    );
  expect(told(false)).not.toContain("\u001b[");
  expect(told(true)).toContain("\u001b[31mstop");
  // A file or pipe has no such method; a terminal asks NO_COLOR by itself.
  expect(screenOf({ columns: 200, hasColors: () => true })).toEqual({ width: 120, colours: true });
  expect(screenOf({} as NodeJS.WriteStream)).toEqual({ width: 80, colours: false });
});
