import { memoizeFor } from "../../quantities/memoizeFor";
import { evaluate } from "../../records/evaluate";
import { type CellValue, isBlank, type Row, verdictOf } from "../../records/kind";
import { HISTORY_COLUMNS, HISTORY_TABLE } from "../../sheets/ours/historySheet";
import { repairsOf } from "../../sheets/ours/repairSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import {
  type Context,
  inUnit,
  isStored,
  type JudgedTable,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";

/** A reading that failed and gave way to a better one, without a word why the second was taken. */
export const repeatUnexplained: Rule = {
  id: "repeat-unexplained",
  reads: "table",
  find: (table, context) => {
    const replaced = replacedOf(table, context.snapshot);
    if (replaced.length === 0) return [];
    const variants = replaced.map(({ row, id, value }) => ({ ...table.rows[row], [id]: value }));
    const before = evaluate(table.kind, variants, context.lineup);
    const isRepaired = repairedIn(table, context);
    const told = new Set<number>();
    return replaced.flatMap(({ row, id, value }, at): Finding[] => {
      const isWorse =
        verdictOf(before[at] ?? {}) === "Fail" && verdictOf(table.judged[row] ?? {}) !== "Fail";
      if (!isWorse || told.has(row) || isRepaired(row)) return [];
      told.add(row);
      const column = table.kind.columns.find((one) => one.id === id);
      return [
        {
          rule: "repeat-unexplained",
          weight: "query",
          ...where(table, row, "remarks"),
          message: context.text.rules["repeat-unexplained"].message(
            rowName(table, row),
            column?.header ?? id,
            inUnit(value, column?.unit),
            inUnit(table.rows[row]?.[id], column?.unit),
          ),
        },
      ];
    });
  },
};

interface Replaced {
  readonly row: number;
  /** Id of the column. */
  readonly id: string;
  readonly value: CellValue;
}

/** What the history tells of rows of a table that say nothing in their remarks. */
function replacedOf(table: JudgedTable, snapshot: Snapshot): Replaced[] {
  const history = tablesOf(snapshot).find(({ name }) => name === HISTORY_TABLE);
  if (!history || table.table.ownLayout) return [];
  const entries = historyBySheet(history).get(table.table.sheet) ?? [];
  if (entries.length === 0) return [];
  const rows = new Map(table.keys.map((key, row) => [key, row]));
  const ids = new Map(
    table.kind.columns
      .filter(({ role, need }) => role === "entry" && need === "reading")
      .map(({ id, header }) => [header, id]),
  );
  return entries.flatMap(({ row: name, column, value }) => {
    const [row, id] = [rows.get(String(name)), ids.get(String(column))];
    if (row === undefined || id === undefined || isBlank(value)) return [];
    const isSilent = isBlank(table.rows[row]?.remarks) && !table.aside.has(row);
    return isSilent && isStored(table, row, id) ? [{ row, id, value: value ?? null }] : [];
  });
}

const historyBySheet = memoizeFor((history: TableSnapshot) => {
  const sheets = new Map<string, Row[]>();
  for (const row of asRecordTable({ columns: HISTORY_COLUMNS }, history).rows) {
    const sheet = String(row.sheet ?? "");
    sheets.set(sheet, [...(sheets.get(sheet) ?? []), row]);
  }
  return sheets;
});

/** Rows of a table whose repair the workbook tells: it says why they were tested again. */
function repairedIn(table: JudgedTable, { snapshot }: Context): (row: number) => boolean {
  const repaired = new Set(
    repairsOf(snapshot)
      .filter(({ row }) => row.sheet === table.table.sheet)
      .map(({ row }) => String(row.row ?? "").trim()),
  );
  return (row) => repaired.has(rowName(table, row));
}
