import {
  type CellValue,
  type Column,
  type Comparison,
  isBlank,
  type RecordKind,
  type Row,
  verdictOf,
} from "../../records/kind";
import { applies, compared, isAsked, type WordColumn, wordColumns } from "../../records/verdict";
import { cellAddress } from "../../sheets/cells/address";
import type { Sense, Verdict } from "../../standards/judge";
import type { Context, JudgedTable } from "../context";

/** One comparison that a row's result rests on, its columns by id. */
export interface RowComparison {
  readonly value: string;
  readonly found: CellValue;
  /** Id of the limit's column; none where a word is asked for. */
  readonly limitColumn?: string;
  readonly limit: CellValue;
  /** A second limit that has to be missed as well for a failure. */
  readonly failsBeyond?: CellValue;
  readonly unit?: string;
  readonly sense: Sense | "word";
  readonly tolerance?: number;
  /** What it decides: acceptance, or whether the test proves anything. */
  readonly decides: "acceptance" | "proof";
  readonly verdict: Verdict;
}

/** A record row as it was judged, for another program to audit. Cells by column id. */
export interface RecordRow {
  readonly sheet: string;
  readonly address: string;
  readonly kind: string;
  readonly key: Row;
  readonly entries: Row;
  /** What follows from keys, ratings and entries: limits, computed values. */
  readonly computed: Row;
  readonly comparisons: readonly RowComparison[];
  /** Where the limits come from. */
  readonly sources: string;
  readonly result: Verdict;
}

/** Every record row of a workbook that is judged, in the order of its tables. */
export const recordRows = ({ tables }: Context): RecordRow[] => tables.flatMap(rowsIn);

const rowsIn = (table: JudgedTable): RecordRow[] => {
  const { kind, judged, aside } = table;
  const words = wordColumns(kind.columns);
  return judged.flatMap((row, at) =>
    aside.has(at)
      ? []
      : [
          {
            sheet: table.table.sheet,
            address: cellAddress(table.table, at, Math.max(0, table.at.get("object") ?? 0)),
            kind: kind.id,
            key: cellsOf(kind, row, ["key"]),
            entries: cellsOf(kind, row, ["entry", "note"]),
            computed: cellsOf(kind, row, ["given", "limit", "computed"]),
            comparisons: [
              ...words
                .filter((word) => isAsked(word, row) && !isBlank(row[word.id]))
                .map((word) => ofWord(word, row)),
              ...kind.enough.flatMap((one) => ofComparison(one, row, "proof")),
              ...kind.accepted.flatMap((one) => ofComparison(one, row, "acceptance")),
            ],
            sources: String(row.sources ?? ""),
            result: verdictOf(row),
          },
        ],
  );
};

const cellsOf = (kind: RecordKind, row: Row, roles: readonly Column["role"][]): Row =>
  Object.fromEntries(
    kind.columns.flatMap(({ id, role }) => {
      const cell = row[id];
      return roles.includes(role) && id !== "sources" && cell !== undefined && !isBlank(cell)
        ? [[id, cell] as const]
        : [];
    }),
  );

const ofWord = ({ id, right, wrong, answered }: WordColumn, row: Row): RowComparison => ({
  value: id,
  found: row[id] ?? null,
  limit: right,
  sense: "word",
  decides: "acceptance",
  verdict: wrong(row[id]) ? "Fail" : answered(row[id]) ? "Pass" : "Inconclusive",
});

const ofComparison = (
  comparison: Comparison,
  row: Row,
  decides: RowComparison["decides"],
): RowComparison[] => {
  const { value, limit, lenient, unit, sense, tolerance } = comparison;
  if (!applies(comparison, row) || isBlank(row[value])) return [];
  const beyond = lenient === undefined ? null : (row[lenient] ?? null);
  return [
    {
      value,
      found: row[value] ?? null,
      limitColumn: limit,
      limit: row[limit] ?? null,
      ...(isBlank(beyond) ? {} : { failsBeyond: beyond }),
      ...(unit === undefined ? {} : { unit }),
      sense,
      ...(tolerance === undefined ? {} : { tolerance }),
      decides,
      verdict: compared(comparison, row),
    },
  ];
};
