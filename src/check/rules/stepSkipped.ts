import { LINEUP } from "../../records/columns/common";
import { type RecordKind, verdictOf } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { kindWords } from "../../records/kindWords";
import { type Context, type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** A later item of a panel that is done while earlier ones, which it waits for, are blank or not OK: one finding a panel for each. */
export const stepSkipped: Rule = {
  id: "step-skipped",
  reads: "book",
  of: ({ id, stages }) =>
    stages !== undefined || KINDS.some((kind) => kind.stages?.first.includes(id)),
  find: (context) =>
    context.tables.flatMap((table) => {
      const { stages } = table.kind;
      return stages ? skippedIn(table, stages, context) : [];
    }),
};

/** A row, and what it waits for. */
interface Staged {
  readonly row: number;
  readonly stage: number;
  readonly isBlank: boolean;
  readonly isWrong: boolean;
}

function skippedIn(
  table: JudgedTable,
  { of, last, first }: NonNullable<RecordKind["stages"]>,
  context: Context,
): Finding[] {
  const says = context.text.rules["step-skipped"];
  const panels = new Map<string, Staged[]>();
  for (const [row, judged] of table.judged.entries()) {
    const stage = of(judged);
    if (stage === undefined || table.aside.has(row)) continue;
    const object = String(judged.object ?? "");
    const staged = panels.get(object) ?? [];
    panels.set(object, staged);
    const verdict = verdictOf(judged);
    staged.push({ row, stage, isBlank: verdict === "Missing", isWrong: verdict === "Fail" });
  }
  const ofAll = panels.get(LINEUP) ?? [];
  return [...panels].flatMap(([object, staged]): Finding[] => {
    if (object === LINEUP) return [];
    const done = staged.filter(({ row, isBlank }) => !isBlank && isDone(table, row));
    const stage = Math.max(0, ...done.map((one) => one.stage));
    const at = done.find((one) => one.stage === stage);
    if (!at || stage === 0) return [];
    const earlier = [...ofAll, ...staged].filter((one) => one.stage < stage);
    const named = (some: readonly Staged[]) => some.map(({ row }) => rowName(table, row));
    const further = stage === last ? first : [];
    const blank = [
      ...named(earlier.filter((one) => one.isBlank)),
      ...further.flatMap((kind) => openOf(context, kind, object)),
    ];
    const wrong = [
      ...named(earlier.filter((one) => one.isWrong)),
      ...further.flatMap((kind) => failedOf(context, kind, object)),
    ];
    const of = rowName(table, at.row);
    const finding = {
      rule: "step-skipped",
      ...where(table, at.row, "state"),
      found: String(table.rows[at.row]?.state ?? ""),
    };
    return [
      ...(wrong.length > 0
        ? [
            {
              ...finding,
              weight: "stop" as const,
              message: says.wrong(of, wrong.slice(0, NAMED), wrong.length),
            },
          ]
        : []),
      ...(blank.length > 0
        ? [
            {
              ...finding,
              weight: "query" as const,
              message: says.message(of, blank.slice(0, NAMED), blank.length),
            },
          ]
        : []),
    ];
  });
}

/** Blank items that a finding names one by one. */
const NAMED = 3;

/** Whether a row was seen to, and is not merely set aside as not applicable. */
const isDone = ({ judged }: JudgedTable, row: number): boolean =>
  verdictOf(judged[row] ?? {}) !== "Not required";

/** The title of a kind of which a panel has rows and none is filled. */
function openOf({ tables, text }: Context, kind: string, object: string): string[] {
  return tables
    .filter((table) => table.kind.id === kind)
    .flatMap(({ judged, aside }) => {
      const own = judged.filter((row, at) => row.object === object && !aside.has(at));
      const isOpen = own.length > 0 && own.every((row) => verdictOf(row) === "Missing");
      return isOpen ? [kindWords(text, kind).title] : [];
    });
}

/** The rows of a kind by which a panel failed. */
const failedOf = ({ tables }: Context, kind: string, object: string): string[] =>
  tables
    .filter((table) => table.kind.id === kind)
    .flatMap((table) =>
      table.judged.flatMap((row, at) =>
        row.object === object && verdictOf(row) === "Fail" && !table.aside.has(at)
          ? `${table.kind.sheet}, ${rowName(table, at)}`
          : [],
      ),
    );
