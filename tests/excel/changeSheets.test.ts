import { expect, test } from "vitest";
import { concede } from "../../src/check/concede";
import { isOpen } from "../../src/check/finding";
import { applyChanges, readExcel } from "../../src/excel/workbook";
import { appended } from "../../src/sheets/appended";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../src/sheets/ours/concessionSheet";
import { tablesOf } from "../../src/sheets/snapshot";
import { check } from "../support/checkBook";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";
import { builtExcel, inExcel } from "./excelSupport";

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
