import { describe, expect, test } from "vitest";
import type { HandedCell, HandedRow } from "../../src/handover/content";
import { inRuns, recordLayout } from "../../src/handover/recordLayout";

const cell = (column: string, value: HandedCell["value"], role: HandedCell["role"] = "entry") => ({
  address: "A1",
  column,
  role,
  value,
});
const row = (part: string, cells: readonly HandedCell[]): HandedRow => ({
  sheet: "Contacts",
  record: "contact",
  title: "Contact resistance",
  panel: "=H01",
  row: `=H01 · ${part}`,
  state: "judged",
  result: "Pass",
  cells,
  comparisons: [],
  sources: "maximum: a document (maker; page 3; invented); test A: another",
});

describe("records on paper", () => {
  const rows = [
    row("Q0 L1", [
      cell("Test A DC", 200),
      cell("R µΩ", 21.4),
      cell("Date", 46323),
      cell("Origin", "meter.csv line 4 at 08:15"),
    ]),
    row("Q0 L2", [
      cell("Test A DC", 200),
      cell("R µΩ", 22),
      cell("Date", 46323),
      cell("Origin", "meter.csv line 5 at 08:16"),
    ]),
    row("Q0 L3", [cell("Test A DC", 200), cell("Date", 46323), cell("Origin", "other.csv line 9")]),
  ];

  test("say once what rows have in common, and each row what is its own; a blank stays blank", () => {
    const layout = recordLayout(rows, "Time");
    // Day 46323 of the 1900 system is 28 October 2026, as any spreadsheet shows it.
    expect(layout.common).toEqual([
      ["Test A DC", "200"],
      ["Date", "2026-10-28"],
    ]);
    expect(layout.titles).toEqual(["R µΩ", "Time"]);
    expect(layout.lines.map(({ item, values }) => [item, ...values])).toEqual([
      ["Q0 L1", "21.4", "08:15"],
      ["Q0 L2", "22", "08:16"],
      ["Q0 L3", "", ""],
    ]);
    expect(layout.exports).toEqual([
      { name: "meter.csv", lines: [4, 5] },
      { name: "other.csv", lines: [9] },
    ]);
    expect(layout.sources).toEqual([
      "maximum: a document (maker; page 3; invented)",
      "test A: another",
    ]);
  });

  test("keep an origin that names no line of an export as it was written", () => {
    const layout = recordLayout(
      [
        ...rows.slice(0, 1),
        row("Q0 L2", [cell("R µΩ", 22), cell("Origin", "read off the display")]),
      ],
      "Time",
    );
    expect(layout.lines.map(({ values }) => values.at(-1))).toEqual([
      "meter.csv line 4 at 08:15",
      "read off the display",
    ]);
    expect(layout.exports).toEqual([]);
  });

  test("know every export of a row that several filled, and all its lines", () => {
    const layout = recordLayout(
      [
        ...rows.slice(0, 1),
        row("Q0 L2", [
          cell("R µΩ", 22),
          cell("Origin", "meter.csv line 5, 7 at 08:16; set; 2.csv line 3"),
        ]),
      ],
      "Time",
    );
    expect(layout.exports).toEqual([
      { name: "meter.csv", lines: [4, 5, 7] },
      { name: "set; 2.csv", lines: [3] },
    ]);
    expect(layout.lines.map(({ values }) => values.at(-1))).toEqual(["08:15", "08:16"]);
  });

  test("draw lines that follow each other together", () => {
    expect(inRuns([3, 5, 6, 7, 9, 10], "to")).toBe("3, 5 to 7, 9 to 10");
    expect(inRuns([], "to")).toBe("");
  });
});
