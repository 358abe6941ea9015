import { expect, test } from "vitest";
import { planFor } from "../../../src/sheets/plan/plan";
import type { Snapshot } from "../../../src/sheets/snapshot";
import { reportOf } from "../../support/checkBook";
import { longLineup } from "../../support/lineups";
import { memoryBook } from "../../support/memoryBook";
import { CONTACT, rowOf, sound, TODAY } from "../support";

const stillOpen = (snapshot: Snapshot, isFinal: boolean) =>
  reportOf(snapshot, TODAY, isFinal).findings.filter(({ rule }) => rule === "still-open");

test("at hand-over, a line for each panel and record of which nothing is recorded", () => {
  const book = memoryBook(planFor(longLineup(3)));
  const [first] = stillOpen(book.snapshot, true).filter(({ record }) => record === "contact");
  expect(first?.weight).toBe("stop");
  expect(first?.message).toMatch(/, Contacts: nothing recorded \(\d+ rows\)\.$/);
});

test("a panel of which a part is recorded is told with how much is not", () => {
  const book = memoryBook(planFor(longLineup(3)));
  book.set(CONTACT, rowOf(book, CONTACT, "L1"), "R µΩ", 31);
  const [first] = stillOpen(book.snapshot, true).filter(({ record }) => record === "contact");
  expect(first?.message).toMatch(/, Contacts: \d+ of \d+ rows without anything recorded\.$/);
});

test("still-open keeps quiet while the work goes on, and where all is recorded", () => {
  expect(stillOpen(memoryBook(planFor(longLineup(3))).snapshot, false)).toEqual([]);
  expect(stillOpen(sound().snapshot, true)).toEqual([]);
});
