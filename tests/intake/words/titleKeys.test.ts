import { expect, test } from "vitest";
import { guessMaps } from "../../../src/intake/ownLayout/guessMaps";
import { mappedTables } from "../../../src/intake/ownLayout/mappedTables";
import { readExport } from "../../../src/intake/table/readExport";
import { numbered, titleKey, titleKeys } from "../../../src/intake/words/titleKeys";
import { english, inWords } from "../../support/inWords";
import { sampleLineup } from "../../support/lineups";

test.each([
  ["R (MΩ)#2", "r mω#2"],
  ["Bolt #2", "bolt 2"],
  ["#2", "2"],
  ["R", "r"],
])("%s is called %s", (said, key) => {
  expect(titleKey(said)).toBe(key);
});

test("of columns with one title each has its number, and the first also the title alone", () => {
  expect(titleKeys(["R", "Bolt#2", "r"])).toEqual([
    ["r#1", "r", "r"],
    ["bolt 2#1", "bolt#2", "bolt 2"],
    ["r#2", "r", "r"],
  ]);
  expect(numbered(["R", "", "R", ""])).toEqual(["R", "", "R#2", ""]);
});

const HEAD = "Panel;Part;Pole;R (µΩ);R (µΩ)\n=H01;Q0;L1;31;32\n";

test.each([
  [{ "R (µΩ)#2": "left out" }, ["resistance", undefined]],
  [{ "R (µΩ)": "left out", "R (µΩ)#2": "resistance" }, [undefined, "resistance"]],
  [{ "R (µΩ)#1": "left out" }, [undefined, "resistance"]],
])("of two columns with one title %o is said", (mapping, fields) => {
  const read = readExport(HEAD, { name: "two.csv", mapping });
  if (!read.ok) throw new Error(read.say(english));
  expect(read.value.columns.slice(3).map(({ field }) => field)).toEqual(fields);
});

test("two columns with one title are refused with what the second is called", () => {
  expect(inWords(readExport(HEAD, { name: "two.csv" }))).toMatchObject({
    say: expect.stringContaining('the second is called "R (µΩ)#2", such as "R (µΩ)#2=left out"'),
  });
});

test("a guessed map keeps two columns with one title apart", () => {
  const lineup = sampleLineup();
  const rows = [
    ["Panel", "Part", "Pole", "R (µΩ)", "R (µΩ)", "Limit (µΩ)", "Limit (µΩ)"],
    ["H01", "Q0", "L1", 31, 99, 40, 41],
  ];
  const cells = {
    rowCount: 2,
    columnCount: 7,
    cell: (row: number, column: number) => rows[row]?.[column] ?? null,
    formula: () => undefined,
  };
  const snapshot = { lineup, sheets: [{ name: "Own", tables: [], cells }] };
  const maps = guessMaps(snapshot, lineup).map(({ map }) => map);
  expect(maps[0]?.columns).toMatchObject({
    "R (µΩ)": "resistance",
    "R (µΩ)#2": "left out",
    "Limit (µΩ)": "limit",
    "Limit (µΩ)#2": "left out",
  });
  const { tables, problems } = mappedTables(snapshot, lineup, maps);
  expect(problems).toEqual([]);
  expect(tables[0]?.rows[0]?.reading).toBe(31);
  expect(tables[0]?.table.ownLayout?.stated?.(0).get("maximum")?.value).toBe(40);
});
