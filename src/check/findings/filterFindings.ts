import { verdictOf } from "../../records/kind";
import type { Verdict } from "../../standards/judge";
import type { Report } from "../check";
import { dayOf, type JudgedTable } from "../context";
import { byWeight } from "./byWeight";
import type { Finding, Weight } from "./finding";

/** What findings have to be to be listed; what is blank does not matter. */
export interface FindingFilter {
  readonly weight: Weight | "";
  /** Id of a record kind. */
  readonly record: string;
  /** A panel or bus section. */
  readonly panel: string;
  /** The result of the finding's row; `today` for rows of today that one tester made. */
  readonly state: Verdict | "today" | "";
  /** Who tested, for `today`. */
  readonly tester: string;
}

export const NO_FILTER: FindingFilter = {
  weight: "",
  record: "",
  panel: "",
  state: "",
  tester: "",
};

const sameName = (one: unknown, other: string) =>
  String(one ?? "")
    .trim()
    .toLowerCase() === other.trim().toLowerCase();

/** Whether a filter lets a finding through. */
function matcher({ context }: Report, filter: FindingFilter): (finding: Finding) => boolean {
  const { weight, record, panel, state, tester } = filter;
  const rowOf = rowFinder(context.tables);
  const isOf = (wanted: string, is: string | undefined) => wanted === "" || wanted === is;
  const isIn = (finding: Finding): boolean => {
    if (state === "") return true;
    const row = rowOf(finding);
    if (!row || state !== "today") return row !== undefined && verdictOf(row) === state;
    return dayOf(row.date) === context.today && sameName(row.by, tester);
  };
  return (finding) =>
    isOf(weight, finding.weight) &&
    isOf(record, finding.record) &&
    isOf(panel, finding.panel) &&
    isIn(finding);
}

/** Finds the judged row that a finding is of. */
const rowFinder = (tables: readonly JudgedTable[]) => {
  const known = new Map<string, ReadonlyMap<string, number>>();
  return ({ record = "", row = "" }: Finding) => {
    const table = tables.find(({ kind }) => kind.id === record);
    if (!table) return undefined;
    const rows = known.get(record) ?? new Map(table.keys.map((key, at) => [key, at]));
    known.set(record, rows);
    return table.judged[rows.get(row) ?? -1];
  };
};

/** The findings that a filter lets through, heaviest first. */
export const filterFindings = (report: Report, filter: FindingFilter): Finding[] =>
  byWeight(report.findings.filter(matcher(report, filter)));

/** Findings of one cause: those of one rule in one column of one sheet that are accepted alike. */
export function byCause(findings: readonly Finding[]): Finding[][] {
  const causes = new Map<string, Finding[]>();
  for (const finding of findings) {
    const { rule, sheet, column = "", concession } = finding;
    const cause = [rule, sheet, column, JSON.stringify(concession ?? "")].join("\u0000");
    const sofar = causes.get(cause);
    if (sofar) sofar.push(finding);
    else causes.set(cause, [finding]);
  }
  return [...causes.values()];
}
