import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import { beforeAll, expect, test } from "vitest";
import { check } from "../../src/check/check";
import { openBook } from "../../src/intake/openBook";
import { messagesFor } from "../../src/messages/messages";
import { daySerial } from "../../src/quantities/dates";
import { checkSurvey } from "../../src/survey/checkSurvey";
import { readBook } from "../../src/xlsx/file";
import { SAMPLE_FOLDER, sampleBooks } from "../tools/sampleBooks";
import { FOREIGN_FAULTS } from "../tools/samples/foreignBooks";
import { MESA_FAULTS } from "../tools/samples/mesaEntries";

/** The workbooks that are committed for trying Gearproof. */
const NAMES = [
  "harbour-half-done.xlsx",
  "harbour-tested.xlsx",
  "mesa-tested.xlsx",
  "mill-cubicle-forms.xlsx",
  "quay-test-sheets.xlsx",
];
const committed = (name: string) => new Uint8Array(readFileSync(`${SAMPLE_FOLDER}/${name}`));
const TODAY = daySerial("2026-11-30");

let made: Readonly<Record<string, Uint8Array>> = {};
beforeAll(async () => {
  made = await sampleBooks();
});

/** Parts of a workbook as texts: what a ZIP library makes of them may differ, what is in them may not. */
const parts = (file: Uint8Array) =>
  Object.entries(unzipSync(file)).map(([part, bytes]) => [part, new TextDecoder().decode(bytes)]);

test("the script makes these workbooks and no others", () => {
  expect(Object.keys(made).sort()).toEqual(NAMES);
});

test.each(NAMES)("%s is what the script makes (else: npm run docs)", (name) => {
  const [mine, theirs] = [parts(made[name] ?? new Uint8Array()), parts(committed(name))];
  expect(theirs.map(([part]) => part)).toEqual(mine.map(([part]) => part));
  for (const [at, [part, text]] of mine.entries())
    expect(theirs[at]?.[1] === text, `${part} differs from what the script makes`).toBe(true);
});

const reportOf = async (name: string) => {
  const checked = check(
    openBook(await readBook(committed(name))),
    TODAY,
    messagesFor("en").findings,
  );
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};

test("of the mesa workbook the check stops at the rows that are faulty on purpose, and at no other", async () => {
  const { findings } = await reportOf("mesa-tested.xlsx");
  const stops = findings.filter(({ weight }) => weight === "stop");
  const panels = Object.keys(MESA_FAULTS).map((key) => key.split(" ")[1]);
  expect(stops.map(({ panel }) => panel).sort()).toEqual(panels.sort());
});

test("the half-done workbook has passed rows, open ones and few findings; the tested one has hardly an open row", async () => {
  const half = await reportOf("harbour-half-done.xlsx");
  const whole = await reportOf("harbour-tested.xlsx");
  expect(half.counts.pass).toBeGreaterThan(200);
  expect(half.counts.open).toBeGreaterThan(200);
  expect(whole.counts.open).toBeLessThan(20);
  expect(half.findings.length).toBeLessThan(whole.findings.length);
});

test.each(Object.entries(FOREIGN_FAULTS))(
  "in %s, a layout of somebody else's, each cell that is wrong on purpose is found, and no other",
  async (name, faults) => {
    const practice =
      name === "quay-test-sheets.xlsx"
        ? ({ ratedkV: 12, basis: "IEC" } as const)
        : ({ ratedkV: 15, basis: "NETA" } as const);
    const snapshot = await readBook(committed(name));
    const { findings } = checkSurvey(snapshot, TODAY, practice, messagesFor("en").survey);
    const cells = new Set(findings.map(({ sheet, address }) => `${sheet}!${address}`));
    expect([...cells].sort()).toEqual(faults.map(([cell]) => cell).sort());
    for (const [cell, rule] of faults)
      expect(
        findings.filter((one) => `${one.sheet}!${one.address}` === cell).map((one) => one.rule),
      ).toContain(rule);
  },
);
