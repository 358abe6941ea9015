import { expect, test } from "vitest";
import { concede } from "../../../src/check/concessions/concede";
import { unsoundConcession } from "../../../src/check/concessions/unsoundConcession";
import { type Finding, isOpen } from "../../../src/check/findings/finding";
import { standings } from "../../../src/check/progress/matrix";
import { CONCESSION_COLUMNS } from "../../../src/sheets/ours/concessionSheet";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { check, TEXT } from "../../support/checkBook";
import {
  type FaultBook,
  faultBook,
  recalculated,
  tableOf,
  withCells,
  withRows,
} from "../../support/faultBook";
import { filledPlan, SOUND } from "../../support/fill";
import { EARTH_BAR, longLineup } from "../../support/lineups";

const TODAY = 46_352;
const GRANTED = { reason: "Bolt of the new type, INV-77", name: "E. Engineer", date: "2026-11-20" };

const book = faultBook(
  filledPlan(
    longLineup(3, {
      criteria: [
        { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
        EARTH_BAR,
      ],
    }),
    11,
    {
      ...SOUND,
      GearWithstand: (row, next) => ({ ...SOUND.GearWithstand?.(row, next), applied: 27 }),
    },
  ),
  TODAY,
);

/** The workbook with one joint tightened by so much, and these rows of concessions. */
const reportOf = (
  applied: number,
  rows: readonly ReturnType<typeof concede>[],
  of: FaultBook = book,
) => {
  const torque = tableOf(of, "GearTorque");
  const granted = tableOf(of, "GearConcessions");
  if (!torque || !granted) throw new Error("no table");
  const loose = recalculated(
    of,
    withCells(torque, [{ row: 0, header: "Applied N·m", value: applied }]),
  );
  const conceded = withRows(
    granted,
    rows.map((row) => CONCESSION_COLUMNS.map(({ id }) => ({ value: row[id] ?? null }))),
  );
  const snapshot: Snapshot = {
    lineup: of.plan.lineup,
    sheets: of.tables.map((table) => ({
      name: table.sheet,
      tables: [table === torque ? loose : table === granted ? conceded : table],
    })),
  };
  const checked = check(snapshot, TODAY);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report;
};
const findingOf = (applied: number) => reportOf(applied, []).findings[0] as Finding;

test("a conceded finding stays listed with its reason, and stops no longer", () => {
  const finding = findingOf(20);
  expect(finding).toMatchObject({
    rule: "out-of-limits",
    row: "=K0001 · Busbar",
    column: "Deviation %",
  });
  const report = reportOf(20, [concede(finding, GRANTED)]);
  expect(report.findings).toEqual([{ ...finding, concession: GRANTED }]);
  expect(report.findings.filter(isOpen)).toEqual([]);
  // The row itself failed, and goes on saying so.
  expect(report.counts.fail).toBe(1);
  expect(standings(report)("=K0001")).toBe("fail");
});

test("of a value that changed since, the concession is asked about and the finding is open", () => {
  const report = reportOf(25, [concede(findingOf(20), GRANTED)]);
  expect(report.findings.map(({ rule }) => rule)).toEqual(["out-of-limits", "concession-stale"]);
  expect(report.findings.every(isOpen)).toBe(true);
});

test("of a concession without its value it is said that the value is blank, and what it is", () => {
  const finding = findingOf(20);
  const report = reportOf(20, [{ ...concede(finding, GRANTED), found: null }]);
  const [, stale] = report.findings;
  expect(stale?.rule).toBe("concession-stale");
  expect(stale?.message).toContain(
    `says nothing under "Found", and the finding there has ${finding.found}`,
  );
});

test("a value with the unit of its column, as the message says it, is the same value", () => {
  const finding = findingOf(20);
  const row = { ...concede(finding, GRANTED), found: `${finding.found} %` };
  expect(reportOf(20, [row]).findings).toEqual([{ ...finding, concession: GRANTED }]);
  const other = { ...row, found: `${finding.found} N·m` };
  expect(reportOf(20, [other]).findings.map(({ rule }) => rule)).toContain("concession-stale");
});

test.each([
  ["reason", "F5"],
  ["name", "G5"],
  ["date", "H5"],
])("a concession without its %s accepts nothing", (lacks, address) => {
  const report = reportOf(20, [{ ...concede(findingOf(20), GRANTED), [lacks]: null }]);
  expect(report.findings).toMatchObject([
    { rule: "out-of-limits" },
    { rule: "concession-incomplete", weight: "query", sheet: "Concessions", address },
  ]);
  expect(report.findings.every(isOpen)).toBe(true);
});

test("a concession dated after the day of the check accepts nothing yet", () => {
  const report = reportOf(20, [concede(findingOf(20), { ...GRANTED, date: "2027-05-01" })]);
  expect(report.findings.map(({ rule }) => rule)).toContain("concession-incomplete");
});

test("a found value that a spreadsheet made a number of is the same value", () => {
  const row = concede(findingOf(20), GRANTED);
  expect(reportOf(20, [{ ...row, found: Number(row.found) }]).findings[0]?.concession).toEqual(
    GRANTED,
  );
});

test("blank rows of the table say nothing", () => {
  expect(reportOf(60, [{}, {}]).findings).toEqual([]);
});

test("a project weighs a rule otherwise, and takes none away", () => {
  const lineup = {
    ...book.plan.lineup,
    ruleWeights: { "out-of-limits": "note" as const, typo: "stop" as const },
  };
  const weighed = faultBook({ ...book.plan, lineup }, TODAY);
  const { findings } = reportOf(20, [], weighed);
  expect(findings.find(({ rule }) => rule === "out-of-limits")?.weight).toBe("note");
  expect(findings.find(({ rule }) => rule === "unknown-rule-weight")?.message).toContain('"typo"');
});

/** What an auditor asks of a concession: common practice, no source. */
test.each([
  ["a reason that is a nod", { ...GRANTED, reason: "ok" }, "Reason", /no reason in words/],
  ["one word", { ...GRANTED, reason: "Tolerable" }, "Reason", /no reason in words/],
  ["by who tested", { ...GRANTED, name: "A.N. Other (crew)" }, "Name", /who made the test/],
  [
    "before the record",
    { ...GRANTED, date: "2026-10-20" },
    "Date",
    /before the record of 2026-11-04/,
  ],
] as const)("a concession that nobody would take: %s", (_name, granted, header, why) => {
  const found = reportOf(40, [concede(findingOf(40), granted)]).findings;
  const unsound = found.find(({ rule }) => rule === "concession-unsound");
  expect(unsound).toMatchObject({ weight: "query", column: header });
  expect(unsound?.message).toMatch(why);
  // What it was to accept stays open.
  expect(found.filter(({ rule }) => rule === "out-of-limits").every(isOpen)).toBe(true);
  expect(found.filter(({ rule }) => rule.startsWith("concession-"))).toHaveLength(1);
});

test("a hold point, a permit and a breakdown are accepted by no word", () => {
  const row = {
    reason: "Agreed with the client by letter INV-77",
    name: "E. Engineer",
    date: 46_350,
  };
  const { tables } = reportOf(60, []).context;
  const of = (finding: Partial<Finding>) =>
    unsoundConcession(
      row,
      {
        rule: "",
        weight: "stop",
        sheet: "Withstand",
        address: "A1",
        message: "",
        record: "withstand",
        ...finding,
      },
      { tables, text: TEXT },
    )?.id;
  expect(of({ rule: "hold-not-released" })).toBe("rule");
  expect(of({ rule: "permit-lacking" })).toBe("rule");
  expect(of({ rule: "out-of-limits", column: "Discharge" })).toBe("rule");
  expect(of({ rule: "remark-contradicts", column: "Remarks" })).toBe("rule");
  expect(of({ rule: "out-of-limits", column: "Applied kV" })).toBeUndefined();
});
