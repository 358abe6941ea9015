import Table from "cli-table3";
import { byWeight } from "../../check/findings/byWeight";
import type { Finding, Weight } from "../../check/findings/finding";
import type { CommandLineText } from "../../messages/commandLine";
import { type Colour, inColour, NO_LINES, type Screen } from "./screen";

type CheckText = CommandLineText["check"];

/** Of each cause so many are told, unless all are asked for. */
const FIRST = 3;

/** Rules whose every finding is a fault of its own: of these so many are told for each sheet. */
const OWN_FAULTS: ReadonlySet<string> = new Set(["out-of-limits", "dew-point", "survey-limit"]);

const COLOURS: Readonly<Record<Weight, Colour>> = { stop: "red", query: "yellow", note: "dim" };

/** Findings of one weight that one rule gave. */
interface Cause {
  readonly weight: Weight;
  readonly rule: string;
  readonly findings: readonly Finding[];
}

/** Findings that say the same of several rows of a sheet, told once. */
type Alike = readonly [first: Finding, ...others: Finding[]];

export interface ListOptions {
  /** What a rule is about. */
  readonly titleOf: (rule: string) => string;
  /** Whether every finding is told, or the first of each cause. */
  readonly all: boolean;
}

/** Findings gathered by cause, heaviest first; of each cause the first few, and how many more there are. */
export function findingList(
  findings: readonly Finding[],
  text: CheckText,
  screen: Screen,
  { titleOf, all }: ListOptions,
): string {
  if (findings.length === 0) return text.none;
  const causes = causesOf(findings).map((cause) => {
    const told = all ? cause.findings.map((one): Alike => [one]) : firstOf(cause);
    return { ...cause, told, left: cause.findings.length - told.flat().length };
  });
  const places = causes.flatMap(({ told }) =>
    told.map(([{ sheet, address }]) => sheet.length + address.length + 1),
  );
  const wide = Math.min(MOST_PLACE, Math.max(...places));
  return causes
    .map(({ weight, rule, findings, told, left }) =>
      [
        `${inColour(text.weights[weight].padEnd(INDENT.length), COLOURS[weight], screen)}${inColour(titleOf(rule), "bold", screen)} (${findings.length})`,
        linesOf(told, text, screen, wide),
        ...(left > 0 ? [`${INDENT}${inColour(text.moreOfCause(left), "dim", screen)}`] : []),
      ].join("\n"),
    )
    .join("\n");
}

const INDENT = " ".repeat(7);

/** Columns that a place takes at most; a longer one goes on in the next line. */
const MOST_PLACE = 24;

function causesOf(findings: readonly Finding[]): Cause[] {
  const causes = new Map<string, Finding[]>();
  for (const finding of byWeight(findings)) {
    const key = `${finding.weight} ${finding.rule}`;
    const before = causes.get(key);
    if (before) before.push(finding);
    else causes.set(key, [finding]);
  }
  return [...causes.values()].flatMap((findings) =>
    findings[0] ? [{ weight: findings[0].weight, rule: findings[0].rule, findings }] : [],
  );
}

/** What is told of a cause: those that say the same together, the first few of them. */
function firstOf({ rule, findings }: Cause): Alike[] {
  const alike = new Map<string, Finding[]>();
  for (const finding of findings) {
    const key = finding.concession ? `${alike.size}` : `${finding.sheet}: ${apartFromRow(finding)}`;
    const before = alike.get(key);
    if (before) before.push(finding);
    else alike.set(key, [finding]);
  }
  const ofSheet = new Map<string, number>();
  return [...alike.values()].flatMap(([first, ...others]) => {
    if (!first) return [];
    const sheet = OWN_FAULTS.has(rule) ? first.sheet : "";
    const before = ofSheet.get(sheet) ?? 0;
    ofSheet.set(sheet, before + 1);
    return before < FIRST ? [[first, ...others] as Alike] : [];
  });
}

/** The words of a finding without the row that they are of. */
const apartFromRow = ({ message, row }: Finding): string =>
  row !== undefined && message.startsWith(row) ? message.slice(row.length) : message;

/** Places and words side by side, as wide as the screen. */
function linesOf(told: readonly Alike[], text: CheckText, screen: Screen, wide: number): string {
  const rest = screen.width - INDENT.length - wide - GAP;
  const table = new Table({ ...NO_LINES, colWidths: [wide, rest], wordWrap: true });
  for (const [first, ...others] of told)
    table.push([
      `${first.sheet}!${first.address}`,
      [
        words(first, text),
        ...(others.length > 0
          ? [
              text.alike(
                others.length,
                others.slice(0, FIRST).map(({ address }) => address),
              ),
            ]
          : []),
      ].join(" "),
    ]);
  return table
    .toString()
    .split("\n")
    .map((line) => `${INDENT}${line}`.trimEnd())
    .join("\n");
}

const GAP = NO_LINES.chars.middle.length;

/** What a finding says, and why it was accepted where it was. */
const words = ({ message, concession }: Finding, text: CheckText): string =>
  concession
    ? text.accepted(message, concession.name, concession.date, concession.reason)
    : message;
