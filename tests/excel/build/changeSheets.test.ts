import { expect, test } from "vitest";
import { concede } from "../../../src/check/concessions/concede";
import { isOpen } from "../../../src/check/findings/finding";
import { findingsSheet } from "../../../src/check/findings/findingsSheet";
import { inExcel as finished } from "../../../src/excel/inExcel";
import { applyChanges, readExcel } from "../../../src/excel/workbook";
import { messagesFor } from "../../../src/messages/messages";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../../src/sheets/ours/concessionSheet";
import { historyWrites, newHistory } from "../../../src/sheets/ours/historySheet";
import { appended, writesOf } from "../../../src/sheets/plan/appended";
import { tablesOf } from "../../../src/sheets/snapshot";
import { addSheet, putBox, sheetNamed } from "../../../src/standin/book";
import type { StandInHost } from "../../../src/standin/host";
import { check } from "../../support/checkBook";
import { filledPlan } from "../../support/fill";
import { longLineup } from "../../support/lineups";
import { builtExcel, inExcel, newExcel, state } from "../excelSupport";

test("findings accepted one after the other are read again as accepted, each in one round trip", async () => {
  const host = await builtExcel(filledPlan(longLineup(1), 3));
  for (const accepted of [1, 2]) {
    const snapshot = await inExcel(host, (context) => readExcel(context));
    const checked = check(snapshot, 46_400);
    if (!checked.ok) throw new Error(checked.reason);
    const finding = checked.report.findings.find(
      (one) => isOpen(one) && one.rule === "missing-reading",
    );
    const table = tablesOf(snapshot).find(({ name }) => name === CONCESSION_TABLE);
    if (!finding || !table) throw new Error("nothing to accept");
    const row = concede(finding, {
      reason: "=Accepted, INV-77 (invented)",
      name: "B. Witness",
      date: "2026-11-20",
    });
    host.reset();
    await inExcel(host, (context) =>
      applyChanges(context, {
        change: [{ table, ...appended(CONCESSION_COLUMNS, [row], table) }],
      }),
    );
    expect(host.batches.length).toBe(1);
    const after = check(await inExcel(host, (context) => readExcel(context)), 46_400);
    if (!after.ok) throw new Error(after.reason);
    const conceded = after.report.findings.filter((one) => !isOpen(one));
    expect(conceded.length).toBe(accepted);
    expect(conceded.map(({ concession }) => concession?.reason)).toContain(
      "=Accepted, INV-77 (invented)",
    );
    expect(after.report.findings.length).toBe(checked.report.findings.length);
  }
});

const history = (reason: string) => {
  const entry = { sheet: "Contacts", row: "=K0001 · Breaker Q0 · L1", column: "R µΩ", value: 31.5 };
  return newHistory(
    historyWrites([{ ...entry, date: null, source: reason, replacedOn: 46_400 }], undefined),
  );
};
const writing = (host: StandInHost, reason: string) =>
  inExcel(host, (context) => applyChanges(context, { create: [history(reason)] }, { most: 2_000 }));
/** Excel with nothing but a sheet of somebody's own. */
const plainExcel = () => {
  const host = newExcel();
  putBox(host.book, sheetNamed(host.book, "Sheet1"), 0, 0, { value: "mine" });
  return host;
};

test("a sheet that was begun when the work was cut short is gone on with, wherever that was", async () => {
  const clean = plainExcel();
  await writing(clean, "a.csv");
  const count = clean.batches.length;
  expect(count).toBeGreaterThan(4);
  for (let batch = 2; batch <= count; batch++)
    for (const share of [0.2, 0.5, 0.8]) {
      const host = plainExcel();
      host.fault = { batch, when: "midway", share };
      await writing(host, "a.csv").catch(() => {});
      host.fault = undefined;
      const isMade = host.book.sheets.some(({ tables }) => tables[0]?.name === "GearHistory");
      if (isMade) continue;
      await writing(host, "a.csv");
      expect(state(host.book).sheets, `batch ${batch}, ${share}`).toEqual(state(clean.book).sheets);
    }
});

test("a sheet of the same name that holds anything else stays, and is named", async () => {
  const host = plainExcel();
  putBox(host.book, addSheet(host.book, "Reading history"), 7, 2, { value: "mine" });
  await expect(writing(host, "a.csv")).rejects.toThrow(
    /has a sheet "Reading history" of its own.*Nothing was changed/,
  );
  expect(host.book.sheets[1]?.cells[7]?.[2]?.value).toBe("mine");
});

test("a sheet of ours that somebody made very hidden is made anew all the same", async () => {
  const host = await builtExcel(filledPlan(longLineup(1), 3));
  const renew = async (rows: number) => {
    const finding = {
      rule: "invented",
      weight: "stop",
      sheet: "Contacts",
      row: "invented",
    } as const;
    const findings = Array.from({ length: rows }, (_, at) => ({
      ...finding,
      address: `B${at + 5}`,
      message: "Invented.",
    }));
    const planned = findingsSheet({ findings }, messagesFor("en").findings);
    await inExcel(host, (context) =>
      applyChanges(context, { renew: [{ planned, writes: writesOf(planned) }] }),
    );
    return sheetNamed(host.book, planned.sheet);
  };
  (await renew(1)).properties.visibility = "VeryHidden";
  const sheet = await renew(2);
  expect(sheet.properties.visibility).toBe("Visible");
  expect(sheet.tables[0]?.area.bottom).toBe((sheet.tables[0]?.area.top ?? 0) + 2);
});

test("the only sheet of a workbook is not made anew: that is said, and it stays", async () => {
  const host = plainExcel();
  const planned = findingsSheet({ findings: [] }, messagesFor("en").findings);
  const list = () =>
    inExcel(host, (context) => applyChanges(context, { renew: [{ planned, writes: [] }] }));
  await list();
  host.book.sheets.shift();
  await expect(list()).rejects.toThrow(/is the only sheet of the workbook.*Nothing was changed/);
  expect(host.book.sheets).toHaveLength(1);
});

test("what fails after the work has come to its end is no failure of the work", async () => {
  const run = async <T>(work: (context: Excel.RequestContext) => Promise<T>): Promise<T> => {
    await work({} as Excel.RequestContext);
    throw new Error("the client's own tidying up");
  };
  expect(await finished(run, async () => "written")).toBe("written");
  await expect(
    finished(run, async () => {
      throw new Error("the work itself");
    }),
  ).rejects.toThrow("the work itself");
});
