import type { Lineup } from "../lineup/lineup";
import { memoizeFor } from "../quantities/memoizeFor";
import type { RecordKind } from "./kind";
import { inPhases } from "./rowsOf";
import { withSecondUnits } from "./secondUnits";

const known = memoizeFor((_kind: RecordKind) => new Map<string, RecordKind>());

/**
 * A record kind as a lineup has it: its headers name the phases as the lineup does, and in American practice
 * its second units stand beside the first. The same object for lineups alike in that, and the kind itself
 * where it has neither.
 *
 * @example kindFor(timing, { basis: "NETA", phases: ["A", "B", "C"] }).columns // …, "A ms", "B ms", "C ms", …
 */
export const kindFor = (
  kind: RecordKind,
  { basis, phases }: Pick<Lineup, "basis" | "phases">,
): RecordKind => {
  const called = known(kind);
  const name = [basis, ...phases].join("\n");
  const before = called.get(name);
  if (before) return before;
  const all = basis === "NETA" ? withSecondUnits(kind.columns) : kind.columns;
  const columns = all.map((column) => {
    const header = inPhases(column.header, phases);
    return header === column.header ? column : { ...column, header };
  });
  const made = columns.every((column, at) => column === kind.columns[at])
    ? kind
    : { ...kind, columns };
  called.set(name, made);
  return made;
};
