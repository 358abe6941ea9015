import { bare } from "../../lineup/lineup";
import { groupedBy } from "../../quantities/groupedBy";
import { forAlike, rowsAlike } from "../../records/cellsOf";
import { isBlank, type RecordKind, type Row, verdictOf } from "../../records/kind";
import { isLeftOut } from "../../records/rowsOf";
import { concededIn } from "../concessions/concessions";
import { type Context, everyKind, type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

/** A panel that stood under voltage by its records, while other records of it, or of its bus section, do not prove it sound. */
export const energizedUnproven: Rule = {
  id: "energized-unproven",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const alive = firstAlive(context);
    if (alive.size === 0) return [];
    const unproven = unprovenBy(context);
    const told = new Set<string>();
    return context.lineup.panels.flatMap(({ designation, section }): Finding[] => {
      const [panel, bus] = [bare(designation), bare(section)];
      const at = alive.get(panel);
      const own = unproven.get(panel) ?? [];
      const ofSection = panel === bus ? [] : (unproven.get(bus) ?? []);
      // What a whole section lacks is told at its first panel.
      if (!at || (own.length === 0 && (ofSection.length === 0 || told.has(bus)))) return [];
      told.add(bus);
      const all = [...own, ...ofSection].sort(
        (one, other) => Number(one.minor) - Number(other.minor),
      );
      const names = all.slice(0, NAMED).map(({ name }) => name);
      return [
        {
          rule: "energized-unproven",
          weight: all[0]?.minor ? "query" : "stop",
          ...where(at.table, at.row, at.column),
          message: context.text.rules["energized-unproven"].message(
            rowName(at.table, at.row),
            designation,
            names,
            all.length,
          ),
          found: all.length,
        },
      ];
    });
  },
};

/** Records that a finding names one by one. */
const NAMED = 4;

interface Alive {
  readonly table: JudgedTable;
  readonly row: number;
  readonly column: string;
}

/** By panel the first row that tells of it under voltage: of the energization, or of a reading taken alive. */
function firstAlive({ tables }: Context): ReadonlyMap<string, Alive> {
  const found = new Map<string, Alive>();
  const inOrder = [...tables].sort(
    (one, other) => Number(other.kind.stages !== undefined) - Number(one.kind.stages !== undefined),
  );
  for (const table of inOrder.filter(({ kind }) => kind.stages ?? kind.live)) {
    const objectOf = forAlike(table.judged, ["object"], ({ object }) => bare(String(object ?? "")));
    for (const [row, judged] of table.judged.entries()) {
      const column = table.aside.has(row) ? undefined : aliveBy(table.kind, judged);
      const object = objectOf(row);
      if (column !== undefined && !found.has(object)) found.set(object, { table, row, column });
    }
  }
  return found;
}

/** The column by which a row tells that its gear stood under voltage. */
function aliveBy({ stages, live, columns }: RecordKind, judged: Row): string | undefined {
  if (stages) return stages.alive(judged) && isAnswered(judged) ? "state" : undefined;
  if (!live?.(judged)) return undefined;
  return columns.find(({ id, need }) => need === "reading" && !isBlank(judged[id]))?.id;
}

/** What was found not OK under voltage stood under voltage all the same. */
const isAnswered = (judged: Row): boolean => ["Pass", "Fail"].includes(verdictOf(judged));

interface Unproven {
  readonly name: string;
  readonly minor: boolean;
}

/** By panel or section its records of the work before voltage that fail, prove nothing or are missing, and that nobody accepted. */
function unprovenBy(context: Context): ReadonlyMap<string, readonly Unproven[]> {
  const isConceded = concededIn(context);
  const unproven = context.tables
    .filter(({ kind }) => isBeforeVoltage(kind, context))
    .flatMap((table) =>
      rowsAlike(table.judged, ["result"], (judged) => !isProven(judged)).flatMap((row) => {
        if (table.aside.has(row) || isConceded(table, row)) return [];
        const judged = table.judged[row] ?? {};
        return {
          object: bare(String(judged.object ?? "")),
          name: `${table.kind.sheet}, ${rowName(table, row)} (${verdictOf(judged)})`,
          minor: table.kind.minor?.(judged) ?? false,
        };
      }),
    );
  return groupedBy(unproven, ({ object }) => object);
}

const isBeforeVoltage = (kind: RecordKind, { lineup }: Context): boolean =>
  kind.step !== undefined && kind.step !== "energization" && !isLeftOut(lineup, kind);

const isProven = (judged: Row): boolean => ["Pass", "Not required"].includes(verdictOf(judged));
