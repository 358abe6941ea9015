import Table from "cli-table3";
import { byWeight } from "../check/byWeight";
import type { Report } from "../check/check";
import type { Compared } from "../check/compare";
import { type Finding, isOpen } from "../check/finding";
import { countWords, matrix } from "../check/matrix";
import { howMany } from "../quantities/howMany";

/** Columns of the terminal, or of a page when there is none. */
const width = () => Math.max(60, Math.min(process.stdout.columns ?? 110, 160));

const plain = {
  style: { head: [], border: [] },
  chars: { mid: "", "left-mid": "", "mid-mid": "", "right-mid": "" },
};

/** More panels and sections than these are not listed where all of theirs passes. */
const MANY = 40;

/** Panels and bus sections against record kinds, each cell with its counts; of many, those that ask for something. */
export function matrixTable(report: Report): string {
  const { objects, kinds, cell } = matrix(report.context);
  const table = new Table({ head: ["", ...kinds.map(({ title }) => title)], ...plain });
  const asks = (object: string) =>
    kinds.some(({ id }) => {
      const { fail = 0, missing = 0, inconclusive = 0 } = cell(object, id) ?? {};
      return fail + missing + inconclusive > 0;
    });
  const asking = objects.length > MANY ? objects.filter(asks) : objects;
  const listed = asking.slice(0, MANY);
  for (const object of listed)
    table.push([object, ...kinds.map(({ id }) => countWords(cell(object, id)))]);
  return [
    ...(listed.length > 0 ? [table.toString()] : []),
    ...(asking.length > listed.length
      ? [`${asking.length - listed.length} more panels and sections like these (all with --html).`]
      : []),
    ...(objects.length > asking.length
      ? [`${objects.length - asking.length} panels and sections of which every row passes.`]
      : []),
  ].join("\n");
}

/** Findings that are never cut short. */
const WHOLE: ReadonlySet<string> = new Set(["out-of-limits", "dew-point"]);

/** What a finding says, and why it was accepted where it was. */
const words = ({ message, concession }: Finding): string =>
  concession
    ? `${message} Conceded by ${concession.name}, ${concession.date}: ${concession.reason}`
    : message;

/** Findings, heaviest first; of a rule with many, the first few and how many more there are. */
export function findingTable(
  findings: readonly Finding[],
  most = Number.POSITIVE_INFINITY,
): string {
  if (findings.length === 0) return "No findings.";
  const room = width() - 7 - 6 - 24 - 10;
  const table = new Table({
    head: ["", "Where", "Finding"],
    ...plain,
    colWidths: [7, 28, Math.max(30, room)],
    wordWrap: true,
  });
  const shown = new Map<string, number>();
  for (const finding of byWeight(findings)) {
    const already = shown.get(finding.rule) ?? 0;
    shown.set(finding.rule, already + 1);
    if (already < most || WHOLE.has(finding.rule))
      table.push([finding.weight, `${finding.sheet}!${finding.address}`, words(finding)]);
  }
  const rest = [...shown].filter(([rule, count]) => count > most && !WHOLE.has(rule));
  return [
    table.toString(),
    ...rest.map(
      ([rule, count]) => `${count - most} more of "${rule}" (all with --json or --html).`,
    ),
  ].join("\n");
}

/** `198 rows: 190 pass, 2 fail, 6 missing; findings: 9 stop, 4 query, 0 note` */
export function summaryLine({ counts, findings }: Report): string {
  const rows = Object.values(counts).reduce((sum, count) => sum + count, 0);
  const weights = (["stop", "query", "note"] as const).map(
    (weight) =>
      `${findings.filter((finding) => isOpen(finding) && finding.weight === weight).length} ${weight}`,
  );
  const conceded = findings.filter((finding) => !isOpen(finding)).length;
  return `${howMany(rows, "row")}: ${countWords(counts) || "none"}. Findings: ${weights.join(", ")}${conceded > 0 ? `; ${conceded} conceded` : ""}.`;
}

/** What became of findings and readings since an earlier revision. */
export function comparedWords(file: string, compared: Compared): string {
  const { closed, fresh, changed, same, altered } = compared;
  const list = (title: string, lines: readonly string[]) =>
    lines.length === 0
      ? []
      : [
          `  ${title}:`,
          ...lines.slice(0, MOST).map((line) => `    ${line}`),
          ...(lines.length > MOST ? [`    and ${lines.length - MOST} more (all with --json)`] : []),
        ];
  const said = ({ sheet, address, message }: Finding) => `${sheet}!${address}: ${message}`;
  return [
    `Against ${file}: ${howMany(closed.length, "finding")} closed, ${fresh.length} new, ${changed.length} changed, ${same} as they were; entries altered: ${altered.length}.`,
    ...list("New", fresh.map(said)),
    ...list(
      "Changed",
      changed.map(({ before, after }) => `${said(after)} Before: ${before.message}`),
    ),
    ...list("Closed", closed.map(said)),
    ...list(
      "Entries altered",
      altered.map(
        ({ sheet, address, row, column, before, after }) =>
          `${sheet}!${address}: ${row}, "${column}": ${before} before, ${after ?? "blank"} now`,
      ),
    ),
  ].join("\n");
}

/** Lines of a list in the terminal. */
const MOST = 20;
