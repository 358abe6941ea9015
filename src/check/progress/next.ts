import { isBlank, type RecordKind, type Row, verdictOf } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import type { Context } from "../context";

/** What is to be done next at one panel or bus section, and what stands in its way. */
export interface NextStep {
  readonly kind: RecordKind;
  readonly object: string;
  /** The stage of the rows, where their kind has stages. */
  readonly stage: string;
  /** Rows still without their readings. */
  readonly missing: number;
  /** Records that come before these and have not passed. */
  readonly blockedBy: readonly { readonly kind: RecordKind; readonly open: number }[];
}

/** Rows of one record kind at one panel or section, of one stage. */
interface Group {
  readonly kind: RecordKind;
  readonly object: string;
  readonly stage: string;
  missing: number;
}

const keyOf = (kind: string, object: string, stage = "") => [kind, object, stage].join("\u0000");

/** The rows still to be read, in the order of the work, each with what must come before and has not passed. */
export function nextSteps({ tables }: Context): NextStep[] {
  /** How many rows have not passed: of a kind at an object, in all and by stage. */
  const open = new Map<string, number>();
  const groups = new Map<string, Group>();
  for (const { kind, judged, aside } of tables)
    for (const [index, row] of judged.entries())
      if (!aside.has(index) && !isBlank(row.object)) countRow(kind, row, open, groups);
  const place = new Map<string, number>(KINDS.map((kind, at) => [kind.id, at]));
  return [...groups.values()]
    .map((group) => ({ ...group, blockedBy: blocking(group, open) }))
    .sort(
      (a, b) =>
        Number(a.blockedBy.length > 0) - Number(b.blockedBy.length > 0) ||
        (place.get(a.kind.id) ?? 0) - (place.get(b.kind.id) ?? 0),
    );
}

function countRow(
  kind: RecordKind,
  row: Row,
  open: Map<string, number>,
  groups: Map<string, Group>,
): void {
  const verdict = verdictOf(row);
  if (verdict === "Pass" || verdict === "Not required") return;
  const object = String(row.object);
  const stage = String(row.stage ?? "");
  for (const part of new Set(["", stage])) {
    const key = keyOf(kind.id, object, part);
    open.set(key, (open.get(key) ?? 0) + 1);
  }
  if (verdict !== "Missing") return;
  const key = keyOf(kind.id, object, stage);
  const group = groups.get(key) ?? { kind, object, stage, missing: 0 };
  group.missing += 1;
  groups.set(key, group);
}

/** Of the steps at each panel or section the first, in the order of the work and of what is not blocked. */
export const firstSteps = (steps: readonly NextStep[]): NextStep[] =>
  [...new Map([...steps].reverse().map((step) => [step.object, step])).values()].reverse();

/** The kinds that come before a group's and have rows that have not passed. */
const blocking = ({ kind, object, stage }: Group, open: ReadonlyMap<string, number>) =>
  (kind.after ?? [])
    .filter(({ stage: its, own }) => own === undefined && (its === undefined || its === stage))
    .flatMap((before) => {
      const earlier = KINDS.find(({ id }) => id === before.kind);
      const count = open.get(keyOf(before.kind, object, before.of)) ?? 0;
      return earlier && count > 0 ? [{ kind: earlier, open: count }] : [];
    });
