import { expect, test } from "vitest";
import { RECORD_KINDS } from "../../src/lineup/recordKinds";
import { KINDS } from "../../src/records/kinds";
import { rowsOf } from "../../src/records/rowsOf";
import { longLineup } from "../support/lineups";

test("a lineup can name every record kind, in the order of the work", () => {
  expect(KINDS.map(({ id }) => id)).toEqual(RECORD_KINDS);
});

test("a kind left out needs no rows; the others keep theirs", () => {
  const lineup = longLineup(1, { leaveOut: [{ kind: "gas", reason: "seen to by the maker" }] });
  for (const kind of KINDS)
    expect(rowsOf(kind, lineup)).toEqual(kind.id === "gas" ? [] : kind.rows(lineup));
});
