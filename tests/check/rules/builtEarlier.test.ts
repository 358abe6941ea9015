import { expect, test } from "vitest";
import { contact } from "../../../src/records/kinds/contact";
import { builtFormulas, markOf } from "../../../src/sheets/cells/builtFormulas";
import type { Snapshot } from "../../../src/sheets/snapshot";
import type { MemoryBook } from "../../support/memoryBook";
import { CONTACT, cellOf, findingsOf, ofRule, sound } from "../support";

const COLUMNS = ["R at 20 °C µΩ", "Above lowest"] as const;
const idOf = (header: string) =>
  contact.columns.find((column) => column.header === header)?.id ?? header;
const earlier = (formula: string) => `IF(TRUE,${formula},"")`;

/** A workbook whose last build wrote other formulas into some columns of contacts, and remembers it. */
function builtBefore(headers: readonly string[]): {
  readonly book: MemoryBook;
  readonly snapshot: () => Snapshot;
} {
  const book = sound();
  const { lineup } = book.snapshot;
  if (!lineup) throw new Error("no lineup");
  const formulas = new Set(builtFormulas(lineup));
  for (const header of headers) {
    const { formula, rowCount } = cellOf(book, CONTACT, 0, header);
    formulas.delete(markOf(contact, CONTACT, idOf(header), formula));
    formulas.add(markOf(contact, CONTACT, idOf(header), earlier(formula)));
    for (let row = 0; row < rowCount; row++)
      book.set(CONTACT, row, header, cellOf(book, CONTACT, row, header).value, earlier(formula));
  }
  const snapshotOf = () => ({ ...book.snapshot, formulas });
  return { book, snapshot: snapshotOf };
}

test("built-earlier tells formulas of an earlier build once, and nothing else of them", () => {
  const { snapshot } = builtBefore(COLUMNS);
  const found = findingsOf(snapshot());
  expect(found.map(({ rule, weight, sheet, address }) => [rule, weight, sheet, address])).toEqual([
    ["built-earlier", "note", "Contacts", "A4"],
  ]);
  expect(found[0]?.message).toMatch(
    /formulas of 2 columns have changed since \(Contacts, R at 20 °C µΩ; Contacts, Above lowest\)\. Build the workbook again/,
  );
});

test("built-earlier asks where cells hold other values than are computed now", () => {
  const { book, snapshot } = builtBefore(["R at 20 °C µΩ"]);
  const { formula } = cellOf(book, CONTACT, 3, "R at 20 °C µΩ");
  book.set(CONTACT, 3, "R at 20 °C µΩ", 12.5, formula);
  const found = findingsOf(snapshot());
  expect(found.map(({ rule, weight }) => [rule, weight])).toEqual([["built-earlier", "query"]]);
  expect(found[0]?.message).toMatch(/1 of their cells holds another value/);
});

test("built-earlier keeps quiet of a workbook that was built with the formulas of now", () => {
  const { snapshot } = builtBefore([]);
  expect(findingsOf(snapshot())).toEqual([]);
});

test("built-earlier keeps quiet of what somebody wrote himself, which is told of as such", () => {
  const { book, snapshot } = builtBefore(COLUMNS);
  const { value, formula } = cellOf(book, CONTACT, 2, "R at 20 °C µΩ");
  book.set(CONTACT, 2, "R at 20 °C µΩ", value, `${formula}*1.0`);
  expect(ofRule(snapshot(), "built-earlier")).toHaveLength(1);
  expect(ofRule(snapshot(), "own-formula")).toMatchObject([
    { sheet: "Contacts", address: book.at(CONTACT, 2, "R at 20 °C µΩ") },
  ]);
});
