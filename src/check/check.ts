import type { FindingsText } from "../messages/messages";
import { toldIn } from "../messages/told";
import { verdictOf } from "../records/kind";
import { isLeftOut } from "../records/rowsOf";
import { a1 } from "../sheets/cells/address";
import type { LayoutProblem, RecordBook } from "../sheets/recordBook";
import type { Verdict } from "../standards/judge";
import { applyConcessions } from "./concessions/applyConcessions";
import type { Context, JudgedTable } from "./context";
import type { Finding } from "./findings/finding";
import type { Reach } from "./findings/gatherFindings";
import { type Edit, judgeTable, rejudge } from "./judgeTable";
import { isYetToCome, openRowsOf } from "./progress/openRows";
import { RULES } from "./rules";
import { type Found, findingsOf, rerunRule, runRule } from "./runRules";
import { tidyNames } from "./tidyNames";

/** How many rows came to each verdict. */
export interface Counts {
  readonly pass: number;
  readonly fail: number;
  /** Of a test that was begun. */
  readonly missing: number;
  /** Of tests that were not begun. */
  readonly open: number;
  readonly inconclusive: number;
  readonly notRequired: number;
}

/** What the check of one workbook comes to. */
export interface Report {
  readonly counts: Counts;
  readonly findings: readonly Finding[];
  /** The tables as they were judged, for the report that draws them. */
  readonly context: Context;
  /** What each rule found, from which a recheck goes on. */
  readonly found: readonly Found[];
}

export const COUNT_OF: Readonly<Record<Verdict, keyof Counts>> = {
  Pass: "pass",
  Fail: "fail",
  Missing: "missing",
  Inconclusive: "inconclusive",
  "Not required": "notRequired",
};

export const noCounts = (): Record<keyof Counts, number> => ({
  pass: 0,
  fail: 0,
  missing: 0,
  open: 0,
  inconclusive: 0,
  notRequired: 0,
});

/** Why a workbook cannot be checked at all, and what would be right. */
export interface Uncheckable {
  readonly ok: false;
  readonly reason: string;
}

/**
 * Computes every record of a workbook again from its entries and lists what is missing, out, does not
 * add up or is out of order. The workbook stays as it is.
 *
 * @param today the day of the check, as a serial day number
 * @param text what the findings say, in the reader's language
 * @param isFinal whether it is the check for hand-over, to which what is still open is a stop
 */
export function check(
  book: RecordBook,
  today: number,
  text: FindingsText,
  isFinal = false,
): { readonly ok: true; readonly report: Report } | Uncheckable {
  const { snapshot, told, lineup, tables, instruments, problems } = book;
  if (tables.length === 0 && problems.length === 0)
    return { ok: false, reason: text.uncheckable.noRecords };
  if (!lineup) return { ok: false, reason: text.uncheckable.noLineup };
  const judged = tables
    .map((table) => judgeTable(tidyNames(table), lineup))
    .filter(
      ({ kind, judged }) =>
        !isLeftOut(lineup, kind) || judged.some((row) => verdictOf(row) !== "Missing"),
    );
  const context: Context = {
    book,
    snapshot,
    lineup,
    told,
    tables: judged,
    openRows: openRowsOf(judged, isFinal),
    instruments,
    today,
    unmapped: unmappedIn(book, text),
    text,
  };
  return {
    ok: true,
    report: reportOf(
      context,
      RULES.map((rule) => runRule(rule, context)),
    ),
  };
}

/** The lines of own layouts that could not be taken for a record, or not whole, in the order of the sheets. */
const unmappedIn = (
  { snapshot, problems }: RecordBook,
  { language }: FindingsText,
): readonly Finding[] => {
  const order = new Map(snapshot.sheets.map(({ name }, index) => [name, index]));
  const place = ({ sheet }: LayoutProblem) => order.get(sheet) ?? -1;
  return [...problems]
    .sort((one, other) => place(one) - place(other))
    .map(({ sheet, row, column, message }) => ({
      rule: "unmapped",
      weight: "query",
      sheet,
      address: a1(row, column),
      message: message(toldIn(language)),
    }));
};

/** Counts the verdicts of the rows that are judged. */
function countsOf(context: Context): Counts {
  const counts = noCounts();
  for (const table of context.tables)
    for (const index of table.judged.keys())
      if (!table.aside.has(index)) counts[countedAs(table, index, context)]++;
  return counts;
}

/** What a row is counted as: its verdict, or as open where its test was not begun. */
export const countedAs = (table: JudgedTable, row: number, { openRows }: Context): keyof Counts => {
  const counted = COUNT_OF[verdictOf(table.judged[row] ?? {})];
  return counted === "missing" && isYetToCome(table, row, openRows) ? "open" : counted;
};

const reportOf = (context: Context, found: readonly Found[]): Report => ({
  counts: countsOf(context),
  findings: applyConcessions(
    [...found.flatMap(findingsOf), ...(context.unmapped ?? [])],
    context,
    reachOf,
  ),
  context,
  found,
});

const REACH: ReadonlyMap<string, Reach | undefined> = new Map(
  RULES.map(({ id, reach }) => [id, reach]),
);

const reachOf = (rule: string): Reach | undefined => REACH.get(rule);

/**
 * The check after an edit: only what the edit reaches is computed and looked for again. A book with
 * another frame than the one that was checked is checked whole. The texts are those of the check before.
 *
 * @param book the workbook as `reopenBook` gives it
 */
export function recheck({ context, found }: Report, book: RecordBook): ReturnType<typeof check> {
  const edited = book.tables.filter((table, index) => table !== context.book.tables[index]);
  const checked = new Set(context.tables.map(({ table }) => table.name));
  if (
    book.frame !== context.book.frame ||
    // A table of a kind that the lineup leaves out counts once something is recorded in it.
    edited.some(({ table }) => !checked.has(table.name))
  )
    return check(book, context.today, context.text, context.openRows === "gathered");
  const byName = new Map(edited.map((table) => [table.table.name, table]));
  const rejudged = context.tables.map((judged): { table: JudgedTable; edit: Edit } => {
    const read = byName.get(judged.table.name);
    return read
      ? rejudge(judged, tidyNames(read), context.lineup)
      : { table: judged, edit: "nothing" };
  });
  const now = rejudged.map(({ table }) => table);
  const openRows = openRowsOf(now, context.openRows === "gathered");
  // With the last rows of a workbook every blank one becomes a question.
  if (openRows !== context.openRows) return check(book, context.today, context.text);
  const after: Context = {
    ...context,
    book,
    snapshot: book.snapshot,
    tables: now,
    unmapped: unmappedIn(book, context.text),
  };
  const edits = rejudged.map(({ edit }) => edit);
  return {
    ok: true,
    report: reportOf(
      after,
      found.map((rule) => rerunRule(rule, after, edits)),
    ),
  };
}
