import Table from "cli-table3";
import { byWeight } from "../check/byWeight";
import type { Report } from "../check/check";
import type { Compared } from "../check/compare";
import { type Finding, isOpen, type Weight } from "../check/finding";
import { countWords, matrix } from "../check/matrix";
import type { CommandLineText } from "../messages/commandLine";

type CheckText = CommandLineText["check"];

/** Columns of the terminal, or of a page when there is none. */
const width = () => Math.max(60, Math.min(process.stdout.columns ?? 110, 160));

const plain = {
  style: { head: [], border: [] },
  chars: { mid: "", "left-mid": "", "mid-mid": "", "right-mid": "" },
};

/** More panels and sections than these are not listed where all of theirs passes. */
const MANY = 40;

/** Panels and bus sections against record kinds, each cell with its counts; of many, those that ask for something. */
export function matrixTable(report: Report, text: CheckText): string {
  const { objects, kinds, cell } = matrix(report.context);
  const table = new Table({ head: ["", ...kinds.map(({ title }) => title)], ...plain });
  const asks = (object: string) =>
    kinds.some(({ id }) => {
      const { fail = 0, missing = 0, open = 0, inconclusive = 0 } = cell(object, id) ?? {};
      return fail + missing + open + inconclusive > 0;
    });
  const asking = objects.length > MANY ? objects.filter(asks) : objects;
  const listed = asking.slice(0, MANY);
  for (const object of listed)
    table.push([
      object,
      ...kinds.map(({ id }) => countWords(cell(object, id), report.context.text)),
    ]);
  return [
    ...(listed.length > 0 ? [table.toString()] : []),
    ...(asking.length > listed.length ? [text.moreObjects(asking.length - listed.length)] : []),
    ...(objects.length > asking.length ? [text.passedObjects(objects.length - asking.length)] : []),
  ].join("\n");
}

/** Findings that are never cut short. */
const WHOLE: ReadonlySet<string> = new Set(["out-of-limits", "dew-point"]);

/** What a finding says, and why it was accepted where it was. */
const words = ({ message, concession }: Finding, text: CheckText): string =>
  concession
    ? text.accepted(message, concession.name, concession.date, concession.reason)
    : message;

/** Findings, heaviest first; of a rule with many, the first few and how many more there are. */
export function findingTable(
  findings: readonly Finding[],
  text: CheckText,
  most = Number.POSITIVE_INFINITY,
): string {
  if (findings.length === 0) return text.none;
  const room = width() - 7 - 6 - 24 - 10;
  const table = new Table({
    head: ["", text.where, text.finding],
    ...plain,
    colWidths: [7, 28, Math.max(30, room)],
    wordWrap: true,
  });
  const shown = new Map<string, number>();
  for (const finding of byWeight(findings)) {
    const already = shown.get(finding.rule) ?? 0;
    shown.set(finding.rule, already + 1);
    if (already < most || WHOLE.has(finding.rule))
      table.push([finding.weight, `${finding.sheet}!${finding.address}`, words(finding, text)]);
  }
  const rest = [...shown].filter(([rule, count]) => count > most && !WHOLE.has(rule));
  return [
    table.toString(),
    ...rest.map(([rule, count]) => text.moreOfRule(count - most, rule)),
  ].join("\n");
}

/** `198 rows: 190 pass, 2 fail, 6 missing. Findings: 9 stop, 4 query, 0 note.` */
export function summaryLine({ counts, findings, context }: Report, text: CheckText): string {
  const rows = Object.values(counts).reduce((sum, count) => sum + count, 0);
  const open = (weight: Weight) =>
    findings.filter((finding) => isOpen(finding) && finding.weight === weight).length;
  const accepted = findings.filter((finding) => !isOpen(finding)).length;
  return text.summary(
    rows,
    countWords(counts, context.text),
    open("stop"),
    open("query"),
    open("note"),
    accepted,
  );
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
  const told = ({ sheet, address, message }: Finding) => `${sheet}!${address}: ${message}`;
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
      altered.map(({ sheet, address, row, column, before, after }) =>
        text.altered(
          `${sheet}!${address}: ${row}`,
          column,
          String(before),
          String(after ?? text.blank),
        ),
      ),
    ),
  ].join("\n");
}

/** Lines of a list in the terminal. */
const MAX_LINES = 20;
