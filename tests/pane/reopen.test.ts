import { expect, test } from "vitest";
import { openBook } from "../../src/intake/openBook";
import { type RepairSaid, reopenRecord } from "../../src/intake/reopenRecord";
import { withResults } from "../../src/intake/takeIn";
import { reopen } from "../../src/pane/check/reopen";
import { keyIds, rowKey } from "../../src/records/kind";
import { historyOf } from "../../src/sheets/ours/historySheet";
import { repairsOf } from "../../src/sheets/ours/repairSheet";
import type { RecordBook } from "../../src/sheets/recordBook";
import type { Snapshot } from "../../src/sheets/snapshot";
import { readBook, writeBook, writeCells } from "../../src/xlsx/file";
import { builtExcel } from "../excel/excelSupport";
import { check } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { english } from "../support/inWords";
import { CONTACTS_ALONE, longLineup } from "../support/lineups";
import { standInHost, WATCH } from "./standInHost";

const TODAY = 46_352;
/** Few sheets; the breaker of the first panel fails by its contact resistance. */
const plan = filledPlan(
  longLineup(2, {
    leaveOut: CONTACTS_ALONE,
  }),
  11,
  {
    GearContact: (row, next) => ({
      ...SOUND.GearContact?.(row, next),
      ...(row.object === "=K0001" && row.pole === "L1" ? { reading: 914 } : {}),
    }),
  },
);
const SAID: RepairSaid = {
  cause: "Film on the contacts",
  work: "Breaker pole",
  done: "Contacts cleaned",
  by: "A. N. Other",
  day: 46_341,
};

function reopened(book: RecordBook) {
  const table = book.tables.find(({ kind }) => kind.id === "contact");
  const row = table?.rows.findIndex(({ reading }) => reading === 914) ?? -1;
  if (!table || row < 0) throw new Error("no failed reading");
  const found = reopenRecord(book, table, row, SAID, TODAY);
  if (!found.ok) throw new Error(found.say(english));
  return { ...found.value, row, key: rowKey(table.rows[row] ?? {}, keyIds(table.kind)) };
}

/** A workbook before and after its failed record was reopened. */
type Host = () => Promise<{ readonly before: Snapshot; readonly after: Snapshot }>;

const hosts: Readonly<Record<string, Host>> = {
  "a file": async () => {
    const { file } = await writeBook(plan);
    const before = await readBook(file);
    const book = openBook(before);
    const { before: first, cells } = reopened(book);
    const changes = [...withResults(book, cells), ...(first.change ?? [])];
    return { before, after: await readBook(await writeCells(file, changes, first)) };
  },
  Excel: async () => {
    const host = standInHost(await builtExcel(plan));
    const before = await host.read(WATCH);
    expect(await reopen(host, reopened(openBook(before)), WATCH)).toBe(0);
    return { before, after: await host.read(WATCH) };
  },
};

test.each(Object.entries(hosts))(
  "in %s a failed record is reopened, its reading kept, and its retest asked for",
  async (_name, make) => {
    const { before, after } = await make();
    const { key, row } = reopened(openBook(before));
    const [repair, ...others] = repairsOf(after);
    expect(others).toEqual([]);
    expect(repair?.row).toMatchObject({
      row: key,
      found: "R µΩ 914; Fail",
      cause: SAID.cause,
      work: SAID.work,
      date: SAID.day,
    });
    const kept = historyOf(after).filter((entry) => entry.row === key);
    expect(kept).toContainEqual(expect.objectContaining({ column: "R µΩ", value: 914 }));
    // What the row held is in the history, entry by entry.
    const was = openBook(before).tables.find(({ kind }) => kind.id === "contact");
    const now = openBook(after).tables.find(({ kind }) => kind.id === "contact");
    for (const { id, header, role } of was?.kind.columns ?? []) {
      if (role !== "entry") continue;
      const value = was?.rows[row]?.[id] ?? null;
      expect(now?.rows[row]?.[id] ?? null, header).toBeNull();
      if (value !== null)
        expect(kept).toContainEqual(expect.objectContaining({ column: header, value }));
    }
    const checked = check(after, TODAY);
    if (!checked.ok) throw new Error(checked.reason);
    expect(checked.report.counts.fail).toBe(0);
    const ofRow = checked.report.findings.filter((finding) => finding.row === key);
    expect(ofRow.map(({ rule, weight }) => `${rule} ${weight}`)).toEqual(["missing-reading stop"]);
  },
);

test("a record of which nothing is recorded is not reopened", () => {
  const table = {
    kind: { columns: [] },
    table: {},
    rows: [{}],
  } as unknown as RecordBook["tables"][0];
  const book = { snapshot: { sheets: [] }, lineup: plan.lineup } as unknown as RecordBook;
  expect(reopenRecord(book, table, 0, SAID, TODAY)).toMatchObject({ ok: false });
});
