import { expect, test } from "vitest";
import { openBook } from "../../src/intake/openBook";
import type { Lineup } from "../../src/lineup/lineup";
import { planFor } from "../../src/sheets/plan/plan";
import { readBook, writeBook } from "../../src/xlsx/file";
import { findingsOf, TODAY } from "../check/support";
import { filledPlan } from "../support/fill";
import { longLineup } from "../support/lineups";

const ABC: Lineup = longLineup(3, { phases: ["A", "B", "C"] });
const LINES: Lineup = longLineup(3);

const POLES = /^(?:A|B|C|R|S|T|L\d) ms$/;
const poleHeaders = async (file: Uint8Array) => {
  const book = openBook(await readBook(file));
  const timing = book.tables.find(({ kind }) => kind.id === "timing");
  return { timing, poles: timing?.table.headers.filter((header) => POLES.test(header)) };
};

test("the heads of a breaker's poles call the phases as the lineup does", async () => {
  const { poles, timing } = await poleHeaders((await writeBook(planFor(ABC))).file);
  expect(poles).toEqual(["A ms", "B ms", "C ms"]);
  expect(timing?.kind.columns.map(({ header }) => header)).toContain("A ms");
  expect([...(timing?.at.keys() ?? [])]).toEqual(expect.arrayContaining(["l1", "l2", "l3"]));
});

test("a sheet keeps the heads that it was built with, its readings and its formulas, when the phases are called otherwise", async () => {
  const { file } = await writeBook(filledPlan(LINES, 1));
  const again = await writeBook(planFor(ABC), file);
  const { poles, timing } = await poleHeaders(again.file);
  expect(poles).toEqual(["L1 ms", "L2 ms", "L3 ms"]);
  expect(typeof timing?.rows[0]?.l1).toBe("number");
  const column = timing?.at.get("fastest") ?? -1;
  expect(timing?.table.formula(0, column)).toContain("[L1 ms]");
  const third = await writeBook(planFor({ ...ABC, phases: ["R", "S", "T"] }), again.file);
  expect((await poleHeaders(third.file)).poles).toEqual(["L1 ms", "L2 ms", "L3 ms"]);
});

test("no finding comes of other heads alone", async () => {
  for (const lineup of [ABC, LINES]) {
    const { file } = await writeBook(filledPlan(lineup, 1));
    const found = findingsOf(await readBook(file), TODAY);
    expect(found.filter(({ sheet }) => sheet === "Timing").map(({ message }) => message)).toEqual(
      [],
    );
  }
});
