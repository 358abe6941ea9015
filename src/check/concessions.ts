import { serialDay } from "../quantities/dates";
import { type CellValue, type Column, isBlank, type Row } from "../records/kind";
import { cellAddress } from "../sheets/address";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../sheets/ours/concessionSheet";
import { asRecordTable } from "../sheets/recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../sheets/snapshot";
import { type Context, dayOf, type RuleWords } from "./context";
import type { Finding } from "./finding";

export const CONCESSION_RULES: readonly RuleWords[] = [
  {
    id: "concession-incomplete",
    title: "A concession without reason, name or date",
    finds:
      "a row of the table of concessions that lacks its reason, its name or its date, or whose date is yet to come",
    why: "Nobody can be asked about it, and it accepts nothing.",
    satisfies: "what it lacks",
    quiet: "for blank rows",
  },
  {
    id: "concession-stale",
    title: "A concession of nothing",
    finds:
      "a complete concession that no finding answers to any more: the finding is gone, or the value is another than the one accepted",
    why: "What was accepted is not what is there now.",
    satisfies: "the concession taken out, or granted anew for what is there now",
    quiet: "for concessions that lack something: another rule reports that",
  },
];

interface Given {
  readonly index: number;
  readonly row: Row;
}

/**
 * Findings with the concessions that were granted for them, and what is wrong with the concessions
 * themselves. A concession is of a finding when rule, sheet, row, column and value are the same.
 */
export function withConcessions(findings: readonly Finding[], context: Context): Finding[] {
  const table = concessionTable(context.snapshot);
  if (!table) return [...findings];
  const given = asRecordTable({ columns: CONCESSION_COLUMNS }, table).rows.flatMap(
    (row, index): Given[] =>
      CONCESSION_COLUMNS.some(({ id }) => !isBlank(row[id])) ? [{ index, row }] : [],
  );
  const byName = new Map<string, Given>();
  for (const one of given) if (!lacking(one.row, context)) byName.set(nameOf(one.row), one);
  const used = new Set<Given>();
  const conceded = findings.map((finding): Finding => {
    const one = byName.size > 0 ? byName.get(nameOf(finding)) : undefined;
    if (!one) return finding;
    used.add(one);
    return {
      ...finding,
      concession: {
        reason: String(one.row.reason),
        name: String(one.row.name),
        date: serialDay(dayOf(one.row.date) ?? 0),
      },
    };
  });
  return [
    ...conceded,
    ...given.flatMap((one): Finding[] => {
      const lacks = lacking(one.row, context);
      if (lacks) return [incomplete(table, one, lacks)];
      return used.has(one) ? [] : [stale(table, one)];
    }),
  ];
}

export const concessionTable = (snapshot: Snapshot): TableSnapshot | undefined =>
  tablesOf(snapshot).find(
    ({ name, headers }) =>
      name === CONCESSION_TABLE ||
      CONCESSION_COLUMNS.every(({ header }) => headers.includes(header)),
  );

/** What a finding and its concession agree in. Spreadsheets make numbers of text that looks like one. */
const nameOf = ({
  rule,
  sheet,
  row,
  column,
  found,
}: {
  readonly [key in "rule" | "sheet" | "row" | "column" | "found"]?: CellValue;
}): string => [rule, sheet, row, column, found].map(plain).join("\u0000");

const plain = (cell: CellValue | undefined): string => {
  const text = String(cell ?? "").trim();
  return text !== "" && Number.isFinite(Number(text)) ? String(Number(text)) : text;
};

/** The first column that a concession lacks. */
const lacking = (row: Row, { today }: Context): Column | undefined =>
  CONCESSION_COLUMNS.find(({ id }) =>
    id === "date"
      ? !((dayOf(row.date) ?? Number.POSITIVE_INFINITY) < today + 1)
      : ["rule", "sheet", "reason", "name"].includes(id) && isBlank(row[id]),
  );

const at = (table: TableSnapshot, { index, row }: Given, header: string) => ({
  sheet: table.sheet,
  address: cellAddress(table, index, Math.max(0, table.headers.indexOf(header))),
  row: String(row.row ?? ""),
  column: header,
});

const incomplete = (table: TableSnapshot, given: Given, { header, id }: Column): Finding => ({
  rule: "concession-incomplete",
  weight: "query",
  ...at(table, given, header),
  message: `The concession of "${given.row.rule ?? ""}" for ${given.row.row || given.row.sheet || "nothing"} ${
    id === "date" && !isBlank(given.row.date)
      ? 'has a "Date" that is no day, or yet to come'
      : `has no "${header}"`
  }; it accepts nothing until it has.`,
});

const stale = (table: TableSnapshot, given: Given): Finding => ({
  rule: "concession-stale",
  weight: "query",
  ...at(table, given, "Rule"),
  message: `The concession of "${given.row.rule}" for ${given.row.row || given.row.sheet}${isBlank(given.row.found) ? "" : `, found ${plain(given.row.found)},`} answers to no finding: it is gone, or the value is another now. Take it out, or grant it anew.`,
  found: plain(given.row.found),
});
