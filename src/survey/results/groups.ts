import { groupBy } from "../../quantities/groupedBy";
import type { Block, Entry, SurveyColumn } from "../find/block";
import { type Bound, boundsOf } from "../rules/judge";
import type { SurveyContext } from "../rules/rule";

/** One limit column of a group: a side, of the readings themselves or of a share worked out from them. */
export interface Slot {
  readonly key: string;
  readonly side: "least" | "most";
}

/** A reading of a group with the bound of each slot that counts for it. */
export interface BoundEntry {
  readonly entry: Entry;
  readonly bounds: ReadonlyMap<string, Bound>;
}

/** The readings of a table that are held against the same limits, line by line. */
export interface Group {
  /** What distinguishes its columns; blank where the table has one group. */
  readonly title: string;
  readonly slots: readonly Slot[];
  readonly lines: readonly (readonly BoundEntry[])[];
}

const slotOf = ({ limit: { side, unit } }: Bound): string => `${side}${unit === "%" ? " %" : ""}`;

/** Of two bounds of one side the tighter: who meets it meets both. */
const tighter = (one: Bound, other: Bound | undefined): Bound =>
  other === undefined || (one.limit.side === "least") === one.limit.number > other.limit.number
    ? one
    : other;

const boundEntry = (entry: Entry, context: SurveyContext): BoundEntry => {
  const bounds = new Map<string, Bound>();
  for (const bound of boundsOf(entry, context)) {
    const key = slotOf(bound);
    bounds.set(key, tighter(bound, bounds.get(key)));
  }
  return { entry, bounds };
};

/** What must be the same, line by line, for columns to share a limit. */
const signature = (entries: readonly BoundEntry[]): string =>
  entries
    .map(({ entry, bounds }) =>
      [
        entry.line,
        entry.kind,
        entry.unit,
        ...[...bounds].map(
          ([slot, { limit, source }]) =>
            `${slot} ${limit.number} ${limit.unit} ${limit.address} ${source}`,
        ),
      ].join(";"),
    )
    .join("|");

const nameOf = ({ stage, operation, group, title }: SurveyColumn): string =>
  [group, title].find((one) => one !== undefined && one !== "") ?? operation ?? stage ?? "";

/** What the columns of a group have in common, or their titles. */
const titleOf = (columns: readonly SurveyColumn[]): string => {
  const names = [...new Set(columns.map(nameOf))];
  return names.join(", ").replace(/\s+/g, " ").slice(0, 60);
};

/** The readings of a table in groups of the same limits; only those for which any line has one. */
export function groupsOf(block: Block, context: SurveyContext): Group[] {
  const columns = groupBy(
    block.entries.map((entry) => boundEntry(entry, context)),
    ({ entry }) => String(entry.column.at),
  );
  const groups = groupBy(columns, signature)
    .map((alike) => alike.flat())
    .filter((entries) => entries.some(({ bounds }) => bounds.size > 0));
  return groups.map((entries): Group => {
    const keys = [...new Set(entries.flatMap(({ bounds }) => [...bounds.keys()]))].sort();
    return {
      title: groups.length > 1 ? titleOf(entries.map(({ entry }) => entry.column)) : "",
      slots: keys.map((key) => ({ key, side: key.startsWith("least") ? "least" : "most" })),
      lines: groupBy(entries, ({ entry }) => String(entry.line)),
    };
  });
}
