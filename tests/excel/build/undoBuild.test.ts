import { describe, expect, test } from "vitest";
import { applyPlan, buildOnto, readExcel, undoBuild } from "../../../src/excel/workbook";
import { planFor } from "../../../src/sheets/plan/plan";
import { putBox, sheetNamed } from "../../../src/standin/book";
import { typeInto } from "../../../src/standin/edits";
import { longLineup } from "../../support/lineups";
import { builtExcel, inExcel, newExcel, state } from "../excelSupport";

const built = (host: Parameters<typeof inExcel>[0], panels: number) =>
  inExcel(host, async (context) => {
    const result = await buildOnto(context, planFor(longLineup(panels)));
    return { result, after: await readExcel(context) };
  });

const undo = (
  host: Parameters<typeof inExcel>[0],
  { result, after }: Awaited<ReturnType<typeof built>>,
) => inExcel(host, (context) => undoBuild(context, result, after));

describe("a build onto a new workbook", () => {
  test("takes its blank sheet along, and undoing brings the workbook of before", async () => {
    const host = newExcel();
    const before = state(host.book);
    const done = await built(host, 2);
    expect(done.result.blank).toBe("Sheet1");
    expect(host.book.sheets.map(({ name }) => name)).not.toContain("Sheet1");
    await undo(host, done);
    expect(state(host.book)).toEqual(before);
  });

  test("leaves a sheet on which something stands", async () => {
    const host = newExcel();
    putBox(host.book, sheetNamed(host.book, "Sheet1"), 0, 0, { value: "mine" });
    await built(host, 1);
    expect(host.book.sheets[0]?.name).toBe("Sheet1");
  });
});

describe("a build onto a workbook that has records", () => {
  test("is undone to the cell: rows that it added go, what it wrote over comes back, readings stay", async () => {
    const host = await builtExcel(planFor(longLineup(2)));
    typeInto(host.book, "GearInsulation", 3, "R 1 min MΩ", 9000);
    // A panel's circuit is the lineup's to give; undoing brings back what was typed over it.
    typeInto(host.book, "GearPanels", 0, "Circuit", "typed over");
    await inExcel(host, readExcel);
    const before = state(host.book);
    const done = await built(host, 3);
    expect(done.result.done.change.some(({ added }) => added > 0)).toBe(true);
    expect(state(host.book).sheets).not.toEqual(before.sheets);
    await undo(host, done);
    expect(state(host.book).sheets.map(({ name, cells }) => [name, cells])).toEqual(
      before.sheets.map(({ name, cells }) => [name, cells]),
    );
    expect(state(host.book).parts).toEqual(before.parts);
    // And it can be built again from there.
    await inExcel(host, (context) => applyPlan(context, planFor(longLineup(3))));
  });

  test("is not undone once something was typed", async () => {
    const host = await builtExcel(planFor(longLineup(1)));
    const done = await built(host, 2);
    typeInto(host.book, "GearInsulation", 0, "R 1 min MΩ", 9000);
    await inExcel(host, readExcel);
    const now = state(host.book);
    await expect(undo(host, done)).rejects.toThrow(
      /was changed since it was built.*Nothing was changed/,
    );
    expect(state(host.book)).toEqual(now);
  });

  test("is not undone while a sheet of it is protected", async () => {
    const host = await builtExcel(planFor(longLineup(1)));
    const done = await built(host, 2);
    sheetNamed(host.book, "Insulation").protected = true;
    await expect(undo(host, done)).rejects.toThrow(/"Insulation" is protected/);
  });
});

describe("a build that renames", () => {
  test("is undone to the cell: the panel and its readings are called as before", async () => {
    const lineup = longLineup(2);
    const host = await builtExcel(planFor(lineup));
    const [panel] = lineup.panels;
    typeInto(host.book, "GearInsulation", 3, "R 1 min MΩ", 9000);
    typeInto(
      host.book,
      "GearConcessions",
      0,
      "Row",
      `${panel?.designation} · Panel · L1-E · before`,
    );
    await inExcel(host, readExcel);
    const before = state(host.book);
    const renamed = planFor({
      ...lineup,
      panels: lineup.panels.map((one, at) =>
        at === 0 ? { ...one, knownAs: one.designation, designation: "=H91" } : one,
      ),
    });
    const done = await inExcel(host, async (context) => {
      const result = await buildOnto(context, renamed);
      return { result, after: await readExcel(context) };
    });
    expect(done.result.done.change.some((change) => change.renamed > 0)).toBe(true);
    expect(JSON.stringify(state(host.book))).toContain("=H91");
    await undo(host, done);
    expect(state(host.book).sheets.map(({ name, cells }) => [name, cells])).toEqual(
      before.sheets.map(({ name, cells }) => [name, cells]),
    );
    expect(state(host.book).parts).toEqual(before.parts);
    // Renamed again from there, the readings go along once more.
    const again = await inExcel(host, (context) => applyPlan(context, renamed));
    expect(again.change.some((change) => change.renamed > 0)).toBe(true);
  });
});
