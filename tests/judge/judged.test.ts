import { expect, test } from "vitest";
import { type Columns, differences } from "./agree";
import { CASES } from "./cases";
import { readJson } from "./outside";
import { computedColumns } from "./recordValues";

/**
 * What LibreOffice computed from native formulas that mean the same as ours (`npm run judge -- --keep`),
 * against what the record kinds compute: every computed column of a few thousand generated rows.
 */
test.each(Object.entries(CASES))("%s agrees with LibreOffice to 1e-9", (name, make) => {
  const ours = computedColumns(make());
  const theirs = readJson<Columns>(`tests/judged/${name}.json`);
  expect(Object.keys(theirs)).toEqual(Object.keys(ours));
  for (const [table, columns] of Object.entries(ours))
    for (const [id, values] of Object.entries(columns))
      expect(theirs[table]?.[id]?.length, `${table} ${id}`).toBe(values.length);
  expect(differences(ours, theirs)).toEqual([]);
});

test("a thousandth of a percent is a difference", () => {
  expect(differences({ T: { x: [1] } }, { T: { x: [1.00001] } })).toHaveLength(1);
  expect(differences({ T: { x: ["Pass"] } }, { T: { x: ["Fail"] } })).toHaveLength(1);
  expect(differences({ T: { x: [null] } }, { T: { x: [0] } })).toHaveLength(1);
});
