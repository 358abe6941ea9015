import type { Report } from "../../check/check";
import type { Compared } from "../../check/compare/compare";
import { type Finding, isOpen, type Weight } from "../../check/findings/finding";
import { countWords } from "../../check/progress/matrix";
import type { CommandLineText } from "../../messages/commandLine";
import { shownInLine } from "../../quantities/shown";

type CheckText = CommandLineText["check"];

/** `198 rows: 190 pass, 2 fail, 6 missing.` and `Findings: 9 stop, 4 query, 0 note.` */
export function summaryLines(
  { counts, findings, context }: Report,
  text: CheckText,
): readonly [rows: string, findings: string] {
  const rows = Object.values(counts).reduce((sum, count) => sum + count, 0);
  const open = (weight: Weight) =>
    findings.filter((finding) => isOpen(finding) && finding.weight === weight).length;
  const accepted = findings.filter((finding) => !isOpen(finding)).length;
  return [
    text.rows(rows, countWords(counts, context.text)),
    text.findings(open("stop"), open("query"), open("note"), accepted),
  ];
}

/** What changed in findings and readings since an earlier revision. */
export function comparedWords(file: string, compared: Compared, text: CheckText): string {
  const { closed, fresh, changed, same, altered } = compared;
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0
      ? []
      : [
          `  ${title}:`,
          ...lines.slice(0, MAX_LINES).map((line) => `    ${line}`),
          ...(lines.length > MAX_LINES ? [`    ${text.more(lines.length - MAX_LINES)}`] : []),
        ];
  const told = ({ sheet, address, message }: Finding) =>
    shownInLine(`${sheet}!${address}: ${message}`);
  return [
    text.against(file, closed.length, fresh.length, changed.length, same, altered.length),
    ...list(text.lists.fresh, fresh.map(told)),
    ...list(
      text.lists.changed,
      changed.map(({ before, after }) => text.changed(told(after), before.message)),
    ),
    ...list(text.lists.closed, closed.map(told)),
    ...list(
      text.lists.altered,
      altered.map(({ sheet, address, row, column, before, after, rows }) =>
        text.altered(
          `${sheet}!${address}: ${row}`,
          column,
          String(before),
          String(after ?? text.blank),
          rows,
        ),
      ),
    ),
  ].join("\n");
}

/** Lines of a list in the terminal. */
const MAX_LINES = 20;
