import { writeCsv } from "hucre/csv";
import type { HandedRow } from "./content";

/** Titles of `records.csv`: one line for each cell of a record. */
export const CSV_TITLES = [
  "Record",
  "Panel",
  "Row",
  "Result",
  "Sheet",
  "Cell",
  "Column",
  "Role",
  "Value",
  "Unit",
  "Source",
] as const;

/** Every reading, limit and verdict, a line each, in UTF-8 with a mark by which spreadsheets know it. */
export const recordsCsv = (rows: readonly HandedRow[]): string => {
  const lines = rows.flatMap(({ title, panel, row, result, sheet, cells, sources }) =>
    cells.map(({ address, column, role, value, unit }) => [
      title,
      panel,
      row,
      result,
      sheet,
      address,
      column,
      role,
      value,
      unit ?? "",
      role === "limit" ? sources : "",
    ]),
  );
  return `\ufeff${writeCsv([[...CSV_TITLES], ...lines])}`;
};
