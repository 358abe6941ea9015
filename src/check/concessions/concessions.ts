import type { FindingsText, RuleId } from "../../messages/messages";
import { serialDay } from "../../quantities/dates";
import { type CellValue, type Column, isBlank, type Row } from "../../records/kind";
import { exactly } from "../../records/quantity";
import { cellAddress } from "../../sheets/cells/address";
import { CONCESSION_COLUMNS, CONCESSION_TABLE } from "../../sheets/ours/concessionSheet";
import { asRecordTable } from "../../sheets/recordTable";
import { type Snapshot, type TableSnapshot, tablesOf } from "../../sheets/snapshot";
import { type Context, dayOf, type JudgedTable, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { gatherFindings, type Reach } from "../findings/gatherFindings";
import { unsoundConcession } from "./unsoundConcession";

/** What is found of the concessions themselves. */
export const CONCESSION_RULES = [
  "concession-incomplete",
  "concession-stale",
  "concession-unsound",
] as const satisfies readonly RuleId[];

interface Given {
  readonly index: number;
  readonly row: Row;
}

/**
 * Findings with the concessions that were granted for them, and what is wrong with the concessions
 * themselves. A concession is of a finding when rule, sheet, row, column and value are the same. Findings of one
 * cause are one, but for those that were accepted by themselves.
 */
export function withConcessions(
  found: readonly Finding[],
  context: Context,
  reachOf: (rule: string) => Reach | undefined,
): Finding[] {
  const table = concessionTable(context.snapshot);
  if (!table) return [...gatherFindings(found, context.text, reachOf, () => false)];
  const given = asRecordTable({ columns: CONCESSION_COLUMNS }, table).rows.flatMap(
    (row, index): Given[] =>
      CONCESSION_COLUMNS.some(({ id }) => !isBlank(row[id])) ? [{ index, row }] : [],
  );
  const byName = new Map<string, Given>();
  for (const one of given)
    if (!lacking(one.row, context)) byName.set(nameOf(withoutUnit(one.row, context)), one);
  const findings = gatherFindings(
    found,
    context.text,
    reachOf,
    (finding) => byName.size > 0 && byName.has(nameOf(finding)),
  );
  const used = new Set<Given>();
  const unsound = new Map<Given, ReturnType<typeof unsoundConcession>>();
  const conceded = findings.map((finding): Finding => {
    const one = byName.size > 0 ? byName.get(nameOf(finding)) : undefined;
    if (!one) return finding;
    used.add(one);
    const lacks = unsoundConcession(one.row, finding, context);
    if (lacks) {
      unsound.set(one, lacks);
      return finding;
    }
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
      if (lacks) return [incomplete(table, one, lacks, context.text)];
      const wrong = unsound.get(one);
      if (wrong) return [unsoundAt(table, one, wrong, context.text)];
      return used.has(one) ? [] : [stale(table, one, presentAt(one, findings), context.text)];
    }),
  ];
}

/** Whether what is wrong with a row was soundly accepted by somebody, whatever it is. */
export function concededIn(context: Context): (table: JudgedTable, row: number) => boolean {
  const table = concessionTable(context.snapshot);
  const rows = table ? asRecordTable({ columns: CONCESSION_COLUMNS }, table).rows : [];
  const given = rows.filter((row) => !lacking(row, context));
  return (of, row) => {
    const place = { sheet: of.table.sheet, row: rowName(of, row) };
    return given.some((one) => {
      if (one.sheet !== place.sheet || String(one.row).trim() !== place.row) return false;
      const column = String(one.column);
      const finding = { ...where(of, row, "result"), column, rule: String(one.rule), message: "" };
      return unsoundConcession(one, { ...finding, weight: "stop" }, context) === undefined;
    });
  };
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

/** The values that findings now have at the place that a concession names. */
const presentAt = ({ row }: Given, findings: readonly Finding[]): readonly string[] => {
  const place = nameOf({ ...row, found: null });
  return findings
    .filter((finding) => nameOf({ ...finding, found: undefined }) === place)
    .flatMap(({ found }) => plain(found) || []);
};

/** A concession whose value stands with the unit of its column, as messages say it: the same value. */
function withoutUnit(row: Row, { tables }: Context): Row {
  const { sheet, column, found } = row;
  const unit = tables
    .filter(({ table }) => table.sheet === sheet)
    .flatMap(({ kind }) => kind.columns.find(({ header }) => header === column)?.unit ?? [])[0];
  const value = unit && typeof found === "string" ? exactly(found, unit) : undefined;
  return value === undefined ? row : { ...row, found: value };
}

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

const incomplete = (
  table: TableSnapshot,
  given: Given,
  { header, id }: Column,
  { rules }: FindingsText,
): Finding => {
  const { lacks, wrongDate } = rules["concession-incomplete"];
  const { rule, row, sheet, date } = given.row;
  const says = id === "date" && !isBlank(date) ? wrongDate : lacks;
  return {
    rule: "concession-incomplete",
    weight: "query",
    ...at(table, given, header),
    message: says(String(rule ?? ""), String(row || sheet || ""), header),
  };
};

const unsoundAt = (
  table: TableSnapshot,
  given: Given,
  { id, why }: { readonly id: string; readonly why: string },
  { rules }: FindingsText,
): Finding => {
  const { rule, row, sheet } = given.row;
  const header = CONCESSION_COLUMNS.find((column) => column.id === id)?.header ?? "Rule";
  return {
    rule: "concession-unsound",
    weight: "query",
    ...at(table, given, header),
    message: rules["concession-unsound"].message(
      String(rule ?? ""),
      String(row || sheet || ""),
      why,
    ),
    found: plain(given.row[id]),
  };
};

const stale = (
  table: TableSnapshot,
  given: Given,
  present: readonly string[],
  { rules }: FindingsText,
): Finding => {
  const { rule, row, sheet, found } = given.row;
  return {
    rule: "concession-stale",
    weight: "query",
    ...at(table, given, "Rule"),
    message: rules["concession-stale"].message(
      String(rule ?? ""),
      String(row || sheet || ""),
      plain(found),
      present,
    ),
    found: plain(found),
  };
};
