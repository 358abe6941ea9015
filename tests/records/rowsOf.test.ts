import { expect, test } from "vitest";
import { KINDS } from "../../src/records/kinds";
import { rowsOf } from "../../src/records/rowsOf";
import { longLineup } from "../support/lineups";

test("no two kinds share an id, a sheet or a table", () => {
  for (const name of ["id", "sheet", "table"] as const)
    expect(new Set(KINDS.map((kind) => kind[name])).size).toBe(KINDS.length);
});

test("a kind left out needs no rows; the others keep theirs", () => {
  const whole = longLineup(1);
  const lineup = longLineup(1, { leaveOut: [{ kind: "gas", reason: "seen to by the maker" }] });
  for (const kind of KINDS)
    expect(rowsOf(kind, lineup)).toEqual(kind.id === "gas" ? [] : rowsOf(kind, whole));
});
