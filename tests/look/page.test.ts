import { expect, test } from "vitest";
import { firstPage, keysOf, pageOf } from "../../src/look/page";
import { KINDS } from "../../src/records/kinds";
import { FINDINGS_COLUMNS } from "../../src/sheets/ours/findingsTable";
import { planFor } from "../../src/sheets/plan/plan";
import { longLineup } from "../support/lineups";

const columns = (keys: number, others: number, width: number) =>
  Array.from({ length: keys + others }, (_, at) => ({
    role: at < keys ? ("key" as const) : ("entry" as const),
    width,
  }));

test.each([
  ["few columns: the small paper", columns(2, 8, 10), { paper: "a4", across: 1, repeated: 0 }],
  ["more: the large one", columns(2, 20, 10), { paper: "a3", across: 1, repeated: 0 }],
  ["still more: two side by side", columns(2, 34, 10), { paper: "a3", across: 2, repeated: 2 }],
  ["even three", columns(3, 60, 10), { paper: "a3", across: 3, repeated: 3 }],
] as const)("%s", (_what, wide, page) => {
  expect(pageOf(wide)).toEqual(page);
});

test("American practice prints on Letter and Tabloid", () => {
  const papers = [columns(2, 8, 10), columns(2, 20, 10), columns(2, 34, 10)].map((wide) => {
    const { paper, across } = pageOf(wide, "American");
    return [paper, across];
  });
  expect(papers).toEqual([
    ["letter", 1],
    ["tabloid", 1],
    ["tabloid", 2],
  ]);
  const paperOf = (basis: "IEC" | "NETA") =>
    new Set(planFor(longLineup(1, { basis })).sheets.map(({ papers }) => papers));
  expect([...paperOf("IEC"), ...paperOf("NETA")]).toEqual(["ISO", "American"]);
});

test("what is printed of a record is at least about 6 points high, and on no more than two pages across", () => {
  // 9 points on the screen; 0.4 inch of margin; A3 and A4 of ISO 216, 11 by 8.5 and 17 by 11 inches, at 7 pixels a character.
  const inside = {
    a3: (420 / 25.4 - 0.8) * 72,
    a4: (297 / 25.4 - 0.8) * 72,
    letter: (11 - 0.8) * 72,
    tabloid: (17 - 0.8) * 72,
  };
  const sheets = [...KINDS, { sheet: "Findings", columns: FINDINGS_COLUMNS }];
  for (const [{ sheet, columns }, papers] of sheets.flatMap((one) =>
    (["ISO", "American"] as const).map((papers) => [one, papers] as const),
  )) {
    const { paper, across, repeated } = pageOf(columns, papers);
    const wide = (some: typeof columns) =>
      some.reduce((sum, { width }) => sum + ((width + 2) * 7 + 5) * 0.75, 0);
    const all = wide(columns) + (across - 1) * wide(columns.slice(0, repeated));
    expect([sheet, across <= 2, (9 * across * inside[paper]) / all > 5.7]).toEqual([
      sheet,
      true,
      true,
    ]);
  }
});

test("the keys of a record stand at its left, and stand whole on the first page with what is in the head", () => {
  for (const { columns } of KINDS) {
    expect(keysOf(columns)).toBe(columns.filter(({ role }) => role === "key").length);
    expect(firstPage(columns)).toBeGreaterThan(pageOf(columns).repeated + 3);
  }
});

test("the sheet of findings goes on one page of A4 across", () => {
  expect(pageOf(FINDINGS_COLUMNS)).toEqual({ paper: "a4", across: 1, repeated: 0 });
});
