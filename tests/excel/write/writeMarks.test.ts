import { describe, expect, test } from "vitest";
import type { Finding } from "../../../src/check/findings/finding";
import { clearMarks, markFindings, readExcel } from "../../../src/excel/workbook";
import type { Area } from "../../../src/sheets/cells/area";
import { planFor } from "../../../src/sheets/plan/plan";
import { newId, putBox, type Sheet, type StandInBook, sheetNamed } from "../../../src/standin/book";
import { deleteRows, insertRows, renameSheet, sortTable } from "../../../src/standin/edits";
import type { StandInHost } from "../../../src/standin/host";
import { check } from "../../support/checkBook";
import { filledPlan } from "../../support/fill";
import { longLineup } from "../../support/lineups";
import { builtExcel, inExcel, state } from "../excelSupport";

const findingsOf = async (host: StandInHost): Promise<readonly Finding[]> => {
  const read = await inExcel(host, (context) => readExcel(context));
  const checked = check(read, 46_400, true);
  if (!checked.ok) throw new Error(checked.reason);
  return checked.report.findings;
};
const mark = (host: StandInHost, findings: readonly Finding[]) =>
  inExcel(host, (context) => markFindings(context, findings));
const clear = (host: StandInHost) => inExcel(host, (context) => clearMarks(context));

const finding = (sheet: string, address: string, weight: Finding["weight"]): Finding => ({
  rule: "invented",
  weight,
  sheet,
  address,
  message: "Invented.",
});

/** Fill that marks give a cell; undefined where it is not marked. The first format counts. */
const markAt = ({ formats }: Sheet, row: number, column: number) =>
  formats.find(
    ({ areas, properties }) =>
      properties["format.fill.color"] !== undefined &&
      String(properties["rule.formula"]).includes("Gearproof mark") &&
      areas.some((area) => inside(area, row, column)),
  )?.properties["format.fill.color"];
const inside = (area: Area, row: number, column: number) =>
  row >= area.top && row <= area.bottom && column >= area.left && column <= area.right;

/** Conditional formats of other people: one of each sort, one of them made by hand. */
function foreign(book: StandInBook, sheet: Sheet) {
  const add = (type: string, properties: Record<string, unknown>, unfindable = false) =>
    sheet.formats.push({
      id: newId(book),
      type,
      areas: [{ top: 3, left: 0, bottom: 40, right: 9 }],
      stopIfTrue: false,
      properties,
      ...(unfindable ? { unfindable } : {}),
    });
  add("ColorScale", {});
  add("Custom", { "rule.formula": "=$A5=1", "format.fill.color": "#ABCDEF" });
  add("Custom", { "rule.formula": "=$B5=2" }, true);
  add("DataBar", {});
}

test("every finding's cell is marked by its weight, its row is outlined, and nothing else is touched", async () => {
  const host = await builtExcel(filledPlan(longLineup(3), 1));
  const before = state(host.book);
  const findings = await findingsOf(host);
  const { cells, formats } = await mark(host, findings);
  const told = findings.flatMap(({ sheet, address, further = [] }) =>
    [address, ...further].map((one) => ({ sheet, address: one })),
  );
  expect(cells).toBe(new Set(told.map(({ sheet, address }) => sheet + address)).size);
  expect(formats).toBeLessThan(12);
  for (const { sheet, address } of told) {
    const [, letters = "", row = ""] = /^([A-Z]+)(\d+)$/.exec(address) ?? [];
    const column = [...letters].reduce((sum, one) => sum * 26 + one.charCodeAt(0) - 64, 0) - 1;
    expect(markAt(sheetNamed(host.book, sheet), Number(row) - 1, column)).toBeTruthy();
  }
  const marked = state(host.book);
  expect(marked.sheets.map(({ formats: _, ...rest }) => rest)).toEqual(
    before.sheets.map(({ formats: _, ...rest }) => rest),
  );
  expect(await clear(host)).toBe(formats);
  expect(state(host.book)).toEqual(before);
});

test("marking again puts the new marks in place of the old ones", async () => {
  const host = await builtExcel(planFor(longLineup(2)));
  const findings = await findingsOf(host);
  const first = await mark(host, findings);
  const once = state(host.book);
  const second = await mark(host, findings);
  expect(second.cleared).toBe(first.formats);
  expect(state(host.book)).toEqual(once);
  expect((await mark(host, [])).cleared).toBe(first.formats);
});

test("the heaviest finding of a cell shows", async () => {
  const host = await builtExcel(planFor(longLineup(1)));
  const sheet = sheetNamed(host.book, "Contacts");
  await mark(host, [
    finding("Contacts", "F6", "note"),
    finding("Contacts", "F6", "stop"),
    finding("Contacts", "F6", "query"),
    finding("Contacts", "F7", "note"),
  ]);
  const [heavy, light] = [markAt(sheet, 5, 5), markAt(sheet, 6, 5)];
  expect(heavy).toBeTruthy();
  expect(light).not.toBe(heavy);
});

test("a mark's rule is native, refers to nothing and calls nothing of ours", async () => {
  const host = await builtExcel(planFor(longLineup(1)));
  await mark(host, await findingsOf(host));
  const rules = host.book.sheets.flatMap(({ formats }) =>
    formats.flatMap(({ type, properties }) =>
      type === "Custom" ? [String(properties["rule.formula"])] : [],
    ),
  );
  expect(rules.length).toBeGreaterThan(0);
  for (const rule of rules) expect(rule).toMatch(/^=LEN\("Gearproof mark: (stop|query|note)"\)>0$/);
});

describe("marks are found again and leave no trace", () => {
  const afterwards: [string, (book: StandInBook) => void][] = [
    [
      "rows were sorted",
      (book) =>
        sortTable(book, "GearInsulation", (a, b) => String(b[2]).localeCompare(String(a[2]))),
    ],
    ["rows were inserted", (book) => insertRows(book, sheetNamed(book, "Insulation"), 8, 5)],
    ["rows were deleted", (book) => deleteRows(book, sheetNamed(book, "Insulation"), 6, 9)],
    ["the sheet was renamed", (book) => renameSheet(book, "Insulation", "IR of the main circuit")],
    [
      "every id has changed, as after saving and opening",
      (book) => {
        for (const sheet of book.sheets)
          for (const format of sheet.formats) format.id = newId(book);
      },
    ],
    [
      "marked rows were copied, and the marks with them",
      (book) => {
        const sheet = sheetNamed(book, "Insulation");
        for (const format of [...sheet.formats])
          sheet.formats.push({
            ...structuredClone(format),
            id: newId(book),
            areas: format.areas.map((area) => ({
              ...area,
              top: area.top + 50,
              bottom: area.bottom + 50,
            })),
          });
      },
    ],
  ];
  test.each(afterwards)("after %s", async (_name, change) => {
    const host = await builtExcel(planFor(longLineup(2)));
    await mark(host, await findingsOf(host));
    expect(sheetNamed(host.book, "Insulation").formats.length).toBeGreaterThan(4);
    change(host.book);
    await clear(host);
    expect(JSON.stringify(host.book)).not.toContain("Gearproof mark");
    const plain = await builtExcel(planFor(longLineup(2)));
    change(plain.book);
    expect(state(host.book)).toEqual(state(plain.book));
  });
});

test("other people's conditional formats stay, also those that cannot be read", async () => {
  const host = await builtExcel(planFor(longLineup(2)));
  for (const sheet of host.book.sheets) foreign(host.book, sheet);
  const before = state(host.book);
  const { formats } = await mark(host, await findingsOf(host));
  for (const sheet of host.book.sheets) foreign(host.book, sheet);
  for (const sheet of host.book.sheets) sheet.formats.splice(-4);
  expect(await clear(host)).toBe(formats);
  expect(state(host.book)).toEqual(before);
});

test.each(["mark", "clear"])("a protected sheet: %s says so and changes nothing", async (what) => {
  const host = await builtExcel(planFor(longLineup(2)));
  const findings = await findingsOf(host);
  await mark(host, findings);
  sheetNamed(host.book, "Insulation").protected = true;
  const before = state(host.book);
  await expect(what === "mark" ? mark(host, findings) : clear(host)).rejects.toThrow(
    /The sheet "Insulation" is protected.*Unprotect Sheet.*Nothing was changed/,
  );
  expect(state(host.book)).toEqual(before);
});

test("several tables on a sheet, filters and hidden rows: the row of the finding's own table is marked", async () => {
  const host = await builtExcel(planFor(longLineup(1)));
  const { book } = host;
  const sheet = sheetNamed(book, "Panels");
  for (const [row, text] of [
    [3, "Own"],
    [4, "x"],
    [5, "y"],
  ] as const)
    putBox(book, sheet, row, 12, { value: text });
  sheet.tables.push({
    id: newId(book),
    name: "Own",
    area: { top: 3, left: 12, bottom: 5, right: 12 },
    showTotals: false,
    properties: {},
  });
  sheet.filter = { top: 3, left: 0, bottom: 4, right: 6 };
  sheet.hiddenRows.add(4);
  const before = state(book);
  await mark(host, [finding("Panels", "M6", "stop"), finding("Panels", "Z40", "note")]);
  const areas = sheet.formats.map(({ areas }) => areas);
  expect(areas).toContainEqual([{ top: 5, left: 12, bottom: 5, right: 12 }]);
  expect(markAt(sheet, 39, 25)).toBeTruthy();
  await clear(host);
  expect(state(book)).toEqual(before);
});
