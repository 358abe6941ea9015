import { type Context, overRows, type Rule } from "./context";
import type { Finding } from "./findings/finding";
import type { Edit } from "./judgeTable";

/** What one rule found, kept by table, so that after an edit only what the edit reaches is looked for again. */
export interface Found {
  readonly rule: Rule;
  /** Of a rule that reads the book: its findings. */
  readonly book: readonly Finding[];
  /** Of a rule that reads rows or tables: its findings by table, with their rows. */
  readonly tables: readonly (readonly FoundInRow[])[];
}

interface FoundInRow {
  readonly row: number;
  readonly finding: Finding;
}

export const findingsOf = ({ book, tables }: Found): readonly Finding[] =>
  book.length > 0 ? book : tables.flatMap((found) => found.map(({ finding }) => finding));

/** Runs a rule over a whole workbook. */
export const runRule = (rule: Rule, context: Context): Found =>
  rule.reads === "book"
    ? { rule, book: rule.find(context), tables: [] }
    : {
        rule,
        book: [],
        tables: context.tables.map((_table, at) => runOver(rule, context, at)),
      };

/** Runs a rule again after an edit. */
export function rerunRule(before: Found, context: Context, edits: readonly Edit[]): Found {
  const { rule } = before;
  if (rule.reads === "book") {
    const reached = context.tables.some(({ kind }, at) => edits[at] !== "nothing" && rule.of(kind));
    return reached ? { ...before, book: rule.find(context) } : before;
  }
  return {
    ...before,
    tables: before.tables.map((found, at) => {
      const edit = edits[at] ?? "everything";
      if (edit === "nothing") return found;
      if (edit === "everything" || rule.reads === "table") return runOver(rule, context, at);
      return [
        ...found.filter(({ row }) => !edit.has(row)),
        ...runOver(rule, context, at, [...edit]),
      ].sort((one, other) => one.row - other.row);
    }),
  };
}

/** Runs a rule over one table, or over some of its rows. */
function runOver(
  rule: Exclude<Rule, { reads: "book" }>,
  context: Context,
  at: number,
  rows?: readonly number[],
): readonly FoundInRow[] {
  const table = context.tables[at];
  if (!table) return [];
  if (rule.reads === "table")
    return rule.find(table, context).map((finding) => ({ row: 0, finding }));
  if (rule.of?.(table.kind) === false) return [];
  const among = rows ?? rule.among(table, context);
  return among.length === 0 ? [] : overRows(table, rule.rows(table, context), among);
}
