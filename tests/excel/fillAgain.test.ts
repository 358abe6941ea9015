import { expect, test } from "vitest";
import { applyChanges, applyFills, applyPlan, readExcel } from "../../src/excel/workbook";
import { NotPutBack } from "../../src/excel/write/putBack";
import { openBook } from "../../src/intake/openBook";
import type { PlacedCell } from "../../src/intake/place/placement";
import { rowKey } from "../../src/records/kind";
import { NOTHING_REMEMBERED } from "../../src/sheets/kept/remembered";
import { planFor } from "../../src/sheets/plan/plan";
import type { RecordTable } from "../../src/sheets/recordTable";
import { addSheet, newBook, putBox, type Sheet, tableNamed } from "../../src/standin/book";
import { calculateRecords, snapshotOfBook } from "../../src/standin/calculate";
import {
  deleteRows,
  insertColumns,
  insertRows,
  sortTable,
  typeInto,
} from "../../src/standin/edits";
import { type StandInHost, standIn } from "../../src/standin/host";
import { filledPlan } from "../support/fill";
import { CONTACTS_ALONE, longLineup } from "../support/lineups";
import { builtExcel, inExcel, placed } from "./excelSupport";

/** What somebody does while the workbook is being written. */
type Act = (host: StandInHost) => void;

const read = async (host: StandInHost) =>
  openBook(await inExcel(host, (context) => readExcel(context)));
const fill = (host: StandInHost, cells: readonly PlacedCell<RecordTable>[]) =>
  inExcel(host, (context) => applyFills(context, cells));

/** Fills cells while somebody does something before batches of the work. */
async function fillWhile(
  host: StandInHost,
  cells: readonly PlacedCell<RecordTable>[],
  acts: Readonly<Record<number, Act>>,
) {
  host.reset();
  host.between = (batch) => acts[batch]?.(host);
  const filled = await fill(host, cells).finally(() => {
    host.between = undefined;
  });
  return filled;
}

const WHEN = [
  ["before the last look", 1],
  ["between look and write", 2],
] as const;

/** An invented layout of insulation readings, a block below a title. */
const OWN = [
  ["Invented works, insulation"],
  ["Panel", "Part", "Combination", "Stage", "R (GΩ)", "Note"],
  ["=K0001", "Circuit", "L1-E", "before", null, "dry"],
  ["=K0001", "Circuit", "L2-E", "before", null, "dry"],
  ["=K0002", "Circuit", "L1-E", "before", null, "dry"],
  ["=K0002", "Circuit", "L2-E", "before", null, "dry"],
];

async function ownExcel(): Promise<{ host: StandInHost; sheet: Sheet }> {
  const book = newBook();
  addSheet(book, "Cover");
  const sheet = addSheet(book, "Insulation");
  OWN.forEach((row, at) => {
    row.forEach((value, column) => {
      if (value !== null) putBox(book, sheet, at, column, { value });
    });
  });
  const host = standIn(book, calculateRecords);
  const maps = [{ sheet: "Insulation", kind: "insulation", titles: 2 }];
  const lineup = longLineup(2, { basis: "IEC" });
  await inExcel(host, (context) =>
    applyChanges(context, { lineup, remembered: { ...NOTHING_REMEMBERED, maps } }),
  );
  return { host, sheet };
}

/** Every reading of the layout, with what stands beside it. */
const readingsOf = ({ cells }: Sheet) =>
  cells.flatMap((row) =>
    (row ?? []).flatMap((box) =>
      box?.value === 1.25
        ? [row.flatMap((one) => (typeof one?.value === "string" ? [one.value] : []))]
        : [],
    ),
  );

const ACTS: readonly (readonly [string, (sheet: Sheet) => Act, boolean])[] = [
  [
    "a row put in above the block",
    (sheet) =>
      ({ book }) =>
        insertRows(book, sheet, 0, 1),
    true,
  ],
  [
    "a row put in above its row",
    (sheet) =>
      ({ book }) =>
        insertRows(book, sheet, 4, 1),
    true,
  ],
  [
    "a column put in before it",
    (sheet) =>
      ({ book }) =>
        insertColumns(book, sheet, 4, 1),
    true,
  ],
  [
    "a row taken out above",
    (sheet) =>
      ({ book }) =>
        deleteRows(book, sheet, 2, 1),
    true,
  ],
  [
    "two rows that change places",
    (sheet) => () => {
      const [one = [], other = []] = sheet.cells.splice(3, 2);
      sheet.cells.splice(3, 0, other, one);
    },
    false,
  ],
];

test.each(
  ACTS.flatMap(([what, make]) => WHEN.map(([when, batch]) => [what, when, make, batch] as const)),
)(
  "own layout: %s, %s: the reading of K0002 L1-E stands beside its names or nowhere",
  async (_what, _when, make, batch) => {
    const { host, sheet } = await ownExcel();
    const book = await read(host);
    const table = book.tables.find(({ kind }) => kind.id === "insulation");
    if (!table) throw new Error("nothing mapped");
    const row = table.rows.findIndex(
      (one) => one.object === "=K0002" && one.combination === "L1-E",
    );
    const cell = { table, row, column: "reading", old: null, value: 1250 };
    const { written, heldBack } = await fillWhile(
      host,
      [{ ...cell, source: { file: "invented.csv", line: 4 } }],
      { [batch]: make(sheet) },
    );
    expect(written.length + heldBack.length).toBe(1);
    expect(readingsOf(sheet)).toEqual(
      written.length === 1 ? [["=K0002", "Circuit", "L1-E", "before", "dry"]] : [],
    );
  },
);

/** Few sheets, since the workbook is built for each case. */
const few = longLineup(2, {
  leaveOut: CONTACTS_ALONE,
});
const built = () => builtExcel(filledPlan(few, 1));

test.each(WHEN)("record table: a column put in before the target, %s", async (_when, batch) => {
  const host = await built();
  const known = await read(host);
  const cells = placed(known.snapshot, "GearContact", [
    [0, "remarks", "one"],
    [1, "remarks", "two"],
  ]);
  const { sheet, table } = tableNamed(host.book, "GearContact");
  const remarks = table.area.left + (cells[0]?.table.at.get("remarks") ?? 0);
  const { written } = await fillWhile(host, cells, {
    [batch]: ({ book }) => insertColumns(book, sheet, remarks, 1),
  });
  expect(written).toHaveLength(2);
  const rows = sheet.cells.slice(table.area.top, table.area.top + 3);
  expect(rows.map((row) => row[remarks]?.value)).toEqual(["Column1", undefined, undefined]);
  expect(rows.map((row) => row[remarks + 1]?.value)).toEqual(["Remarks", "one", "two"]);
});

test.each(WHEN)("record table: rows sorted %s come to their own readings", async (_when, batch) => {
  const host = await built();
  const known = await read(host);
  const cells = placed(
    known.snapshot,
    "GearContact",
    [0, 1, 2, 3].map((row) => [row, "remarks", `line ${row}`] as const),
  );
  const keyOf = ({ object, part, pole }: RecordTable["rows"][number]) => [object, part, pole];
  const wanted = cells.map(({ table, row, value }) => [...keyOf(table.rows[row] ?? {}), value]);
  const { written } = await fillWhile(host, cells, {
    [batch]: ({ book }) =>
      sortTable(book, "GearContact", (one, other) =>
        rowKey({ a: other[0] ?? null, b: other[2] ?? null }, ["a", "b"]).localeCompare(
          rowKey({ a: one[0] ?? null, b: one[2] ?? null }, ["a", "b"]),
        ),
      ),
  });
  expect(written).toHaveLength(4);
  const rows = (await read(host)).tables.find(({ kind }) => kind.id === "contact")?.rows ?? [];
  const said = rows.flatMap((row) => (row.remarks === null ? [] : [[...keyOf(row), row.remarks]]));
  expect(said).toHaveLength(4);
  expect(said).toEqual(expect.arrayContaining(wanted));
});

/** Something typed between look and write, and a failure of the batches that would put it back. */
async function typedOver(fails: readonly number[], code = "GeneralException") {
  const host = await built();
  const known = await read(host);
  const cells = placed(known.snapshot, "GearContact", [
    [0, "remarks", "one"],
    [1, "remarks", "two"],
  ]);
  const act: Act = ({ book }) => typeInto(book, "GearContact", 1, "Remarks", "typed on site");
  const acts: Record<number, Act> = { 2: act };
  for (const batch of [3, 4, 5, 6, 7, 8])
    acts[batch] = (one) => {
      one.fault = fails.includes(batch) ? { batch, when: "before", code } : undefined;
    };
  const work = fillWhile(host, cells, acts);
  const settled = await work.then(
    (filled) => filled,
    (error: unknown) => error,
  );
  const rows = openBook(snapshotOfBook(host.book)).tables.find(({ kind }) => kind.id === "contact");
  return { settled, remarks: rows?.rows.slice(0, 2).map(({ remarks }) => remarks) };
}

test("what was typed between look and write is put back though the putting back fails at first", async () => {
  const { settled, remarks } = await typedOver([3, 4]);
  expect(settled).toMatchObject({ written: [{ row: 0 }], heldBack: [{ row: 1 }] });
  expect(remarks).toEqual(["one", "typed on site"]);
});

test("where it cannot be put back, the error names the cell and what it held", async () => {
  const { settled } = await typedOver([3, 4, 5, 6, 7, 8], "InvalidOperationInCellEditMode");
  expect(settled).toBeInstanceOf(NotPutBack);
  expect(String(settled)).toMatch(/"Contacts" [A-Z]+6 held "typed on site".*hold that again/);
  expect((settled as NotPutBack).lost).toMatchObject([
    { sheet: "Contacts", value: "typed on site" },
  ]);
});

/** What each record of contact resistance says, by its names; blank rows apart. */
const byName = (host: StandInHost) =>
  Object.fromEntries(
    (
      openBook(snapshotOfBook(host.book)).tables.find(({ kind }) => kind.id === "contact")?.rows ??
      []
    ).flatMap((row) =>
      row.object === null ? [] : [[rowKey(row, ["object", "part", "pole"]), row]],
    ),
  );

const BUILD_ACTS: readonly (readonly [string, Act])[] = [
  ["a row put in", ({ book }) => insertRows(book, tableNamed(book, "GearContact").sheet, 5, 1)],
  [
    "a column put in",
    ({ book }) => insertColumns(book, tableNamed(book, "GearContact").sheet, 3, 1),
  ],
  [
    "a sort",
    ({ book }) =>
      sortTable(book, "GearContact", (one, other) =>
        `${other[0]}${other[2]}`.localeCompare(`${one[0]}${one[2]}`),
      ),
  ],
];

test.each(BUILD_ACTS)(
  "a build that brings limits up to date during %s writes none on another row, and comes to the same when it is run again",
  async (_what, act) => {
    const own = {
      quantity: "contact resistance µΩ",
      value: 12,
      from: "maker" as const,
      document: "INV-1 (invented)",
    };
    const plan = planFor({ ...few, criteria: [own] });
    const clean = await built();
    await inExcel(clean, (context) => applyPlan(context, plan));
    const wanted = byName(clean);
    const entries = byName(await built());
    expect(wanted).not.toEqual(entries);
    for (let batch = 4; batch <= clean.batches.length; batch++) {
      const host = await built();
      host.between = (number) => {
        if (number === batch) act(host);
      };
      await inExcel(host, (context) => applyPlan(context, plan)).catch((error: unknown) => {
        expect(String(error)).toMatch(/changed while (it was read|the records were being built)/);
      });
      host.between = undefined;
      for (const [name, row] of Object.entries(byName(host)))
        expect([name, row.reading, row.remarks]).toEqual([
          name,
          entries[name]?.reading,
          entries[name]?.remarks,
        ]);
      await inExcel(host, (context) => applyPlan(context, plan));
      expect(byName(host), `batch ${batch}`).toEqual(wanted);
    }
  },
);
