import { isBlank, type RecordKind, verdictOf } from "../records/kind";
import { KINDS } from "../records/kinds";
import type { Context } from "./context";

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

/** The rows still to be read, in the order of the work, each with what must come before and has not passed. */
export function nextSteps({ tables }: Context): NextStep[] {
  const open = new Map<string, number>();
  const rows = (kind: string, object: string, of = "") => `${kind}\u0000${object}\u0000${of}`;
  const missing = new Map<
    string,
    { kind: RecordKind; object: string; stage: string; count: number }
  >();
  const stageOf = (row: Readonly<Record<string, unknown>>) => String(row.stage ?? "");
  for (const { kind, judged, aside } of tables)
    for (const [index, row] of judged.entries()) {
      if (aside.has(index)) continue;
      const object = String(row.object ?? "");
      const verdict = verdictOf(row);
      if (isBlank(row.object) || verdict === "Not required") continue;
      if (verdict !== "Pass")
        for (const stage of new Set(["", stageOf(row)])) {
          const key = rows(kind.id, object, stage);
          open.set(key, (open.get(key) ?? 0) + 1);
        }
      if (verdict === "Missing") {
        const key = rows(kind.id, object, stageOf(row));
        const sofar = missing.get(key);
        missing.set(key, {
          kind,
          object,
          stage: stageOf(row),
          count: (sofar?.count ?? 0) + 1,
        });
      }
    }
  const place = new Map(KINDS.map((kind, at) => [kind.id, at]));
  return [...missing.values()]
    .map(({ kind, object, stage: own, count }) => ({
      kind,
      object,
      stage: own,
      missing: count,
      blockedBy: (kind.after ?? [])
        .filter(({ stage }) => stage === undefined || stage === own)
        .flatMap(({ kind: id, of }) => {
          const before = KINDS.find((one) => one.id === id);
          const count = open.get(rows(id, object, of ?? "")) ?? 0;
          return before && count > 0 ? [{ kind: before, open: count }] : [];
        }),
    }))
    .sort(
      (one, other) =>
        (one.blockedBy.length > 0 ? 1 : 0) - (other.blockedBy.length > 0 ? 1 : 0) ||
        (place.get(one.kind.id) ?? 0) - (place.get(other.kind.id) ?? 0),
    );
}
