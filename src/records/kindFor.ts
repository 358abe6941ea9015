import type { Lineup } from "../lineup/lineup";
import { memoizeFor } from "../quantities/memoizeFor";
import type { RecordKind } from "./kind";
import { inPhases } from "./rowsOf";

const known = memoizeFor((_kind: RecordKind) => new Map<string, RecordKind>());

/**
 * A record kind as a lineup has it: its headers name the phases as the lineup does. The same object for
 * lineups that name them alike, and the kind itself where no header names a phase.
 *
 * @example kindFor(timing, { phases: ["A", "B", "C"] }).columns // …, "A ms", "B ms", "C ms", …
 */
export const kindFor = (kind: RecordKind, { phases }: Pick<Lineup, "phases">): RecordKind => {
  const called = known(kind);
  const name = phases.join("\n");
  const before = called.get(name);
  if (before) return before;
  const columns = kind.columns.map((column) => {
    const header = inPhases(column.header, phases);
    return header === column.header ? column : { ...column, header };
  });
  const made = columns.every((column, at) => column === kind.columns[at])
    ? kind
    : { ...kind, columns };
  called.set(name, made);
  return made;
};
