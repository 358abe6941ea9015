import { unzipSync } from "fflate";
import { writeXlsx } from "hucre/xlsx";
import { describe, expect, test } from "vitest";
import { messagesFor } from "../../src/messages/messages";
import { isBesideName } from "../../src/sheets/besideTable";
import { checkSurvey } from "../../src/survey/checkSurvey";
import { resultColumns } from "../../src/survey/results/resultColumns";
import { readBook } from "../../src/xlsx/readBook";
import { withBeside, withoutBeside } from "../../src/xlsx/writeBeside";
import { ownBook } from "../support/ownBook";

const TODAY = 48_000;
const ANSWERS = { ratedkV: 15, basis: "NETA" } as const;
const TEXT = messagesFor("en").survey;

const columnsOf = async (file: Uint8Array) =>
  resultColumns(await readBook(file), TODAY, ANSWERS, TEXT).beside;
const added = async (file: Uint8Array) => withBeside(file, await columnsOf(file));
const reported = async (file: Uint8Array) =>
  checkSurvey(await readBook(file), TODAY, ANSWERS, TEXT);

/** The parts of a file that two files do not have alike. */
function differing(one: Uint8Array, other: Uint8Array): string[] {
  const [a, b] = [unzipSync(one), unzipSync(other)];
  return [...new Set([...Object.keys(a), ...Object.keys(b)])].filter(
    (name) => Buffer.compare(Buffer.from(a[name] ?? "-"), Buffer.from(b[name] ?? "-")) !== 0,
  );
}

const text = (file: Uint8Array, part: string) => new TextDecoder().decode(unzipSync(file)[part]);

const FILL = { type: "pattern", pattern: "solid" } as const;

/** An invented table with a coloured head and lines, and a coloured blank cell beside it. */
const colouredBook = (): Promise<Uint8Array> => {
  const rows = [
    ["Panel", "Connection", "Reading GΩ", "Min. GΩ"],
    ["W1", "A-E", 31.2, 2],
    ["W1", "B-E", 1.5, 2],
    ["W2", "A-E", 33.1, 2],
    ["W2", "B-E", 28.4, 2],
  ];
  const colours = ["DDDDFF", "FFFFEE", "EEFFEE"];
  const cells = new Map(
    rows.flatMap((line, row) =>
      line.map(
        (value, column) =>
          [
            `${row},${column}`,
            {
              value,
              style: {
                fill: { ...FILL, fgColor: { rgb: colours[row === 0 ? 0 : 1 + (row % 2)] } },
              },
            },
          ] as const,
      ),
    ),
  );
  cells.set("3,5", {
    value: null as never,
    style: { fill: { ...FILL, fgColor: { rgb: "FF00FF" } } },
  });
  return writeXlsx({ sheets: [{ name: "IR", rows, cells }] });
};

describe.each([
  ["an Excel table, joined heads and formulas", ownBook],
  ["coloured lines", colouredBook],
])("%s", (_name, make) => {
  test("columns that are added and removed leave the file as it was, byte for byte in every part", async () => {
    const file = await make();
    const more = await added(file);
    expect(differing(file, more).length).toBeGreaterThan(1);
    const back = await withoutBeside(more);
    expect(back.tables).toBeGreaterThan(0);
    expect(differing(file, back.file)).toEqual([]);
  });

  test("the check of the workbook says the same with the columns as without", async () => {
    const file = await make();
    expect(await reported(await added(file))).toEqual(await reported(file));
  });

  test("columns that are added again come to the same", async () => {
    const once = await added(await make());
    expect(differing(once, await added(once))).toEqual([]);
  });
});

test("the columns look as the table beside them, line by line, and a blank cell of the user's keeps its own look", async () => {
  const file = await added(await colouredBook());
  const styleAt = (address: string) =>
    new RegExp(`<c r="${address}"[^>]*? s="(\\d+)"`).exec(
      text(file, "xl/worksheets/sheet1.xml"),
    )?.[1];
  for (const row of [1, 2, 3, 5]) expect(styleAt(`F${row}`), `row ${row}`).toBe(styleAt(`D${row}`));
  expect(styleAt("E1")).toBe(styleAt("D1"));
  expect(styleAt("F4")).not.toBe(styleAt("D4"));
});

test("the names by which the columns are found are hidden, and those of the user's stay", async () => {
  const own = [{ name: "Witness", range: "IR!$A$1" }];
  const file = await writeXlsx({
    sheets: [
      {
        name: "IR",
        rows: [
          ["Panel", "Connection", "Reading GΩ", "Min. GΩ"],
          ["W1", "A-E", 31.2, 2],
          ["W1", "B-E", 30.5, 2],
          ["W2", "A-E", 33.1, 2],
        ],
      },
    ],
    namedRanges: own,
  });
  const more = await added(file);
  const names = [
    ...text(more, "xl/workbook.xml").matchAll(/<definedName name="(\w+)"([^>]*)>([^<]*)/g),
  ];
  expect(names.map(([, name = ""]) => [name, isBesideName(name)])).toEqual([
    ["Witness", false],
    ["GearResults1", true],
  ]);
  expect(names[1]?.[2]).toContain('hidden="1"');
  expect(names[1]?.[3]).toBe("'IR'!$E$1:$G$4");
  expect(differing(file, (await withoutBeside(more)).file)).toEqual([]);
});

test("a workbook without such columns stays as it is", async () => {
  const file = await ownBook();
  expect(await withoutBeside(file)).toEqual({ file, tables: 0 });
});
