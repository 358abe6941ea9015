import { type Against, type RecordKind, type Row, verdictOf } from "../../records/kind";
import { KINDS } from "../../records/kinds";
import { type Context, type JudgedTable, overRows, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";

const HELD_AGAINST: ReadonlySet<string> = new Set(
  KINDS.flatMap(({ against = [] }) => against.map(({ kind }) => kind)),
);
const isCompared = ({ id, against }: RecordKind) => against !== undefined || HELD_AGAINST.has(id);

const STOPS: ReadonlySet<string> = new Set(["setting", "confirmed"]);

/** Two records of one thing, each good by itself, that cannot both be right. */
export const recordsContradict: Rule = {
  id: "records-contradict",
  reads: "book",
  of: isCompared,
  find: (context) =>
    context.tables.flatMap((table) =>
      (table.kind.against ?? []).flatMap((against) => found(table, against, context)),
    ),
};

function found(table: JudgedTable, against: Against, context: Context): Finding[] {
  const others = othersOf(against, context);
  if (others.size === 0) return [];
  const says = context.text.rules["records-contradict"];
  return overRows(table, (row, _stored, judged): Finding | undefined => {
    const of = against.own(judged);
    for (const other of (of !== undefined && others.get(of)) || []) {
      const told = against.contradiction(judged, other.judged, context.lineup);
      // A device that is not left as ordered fails, and is told of by that.
      if (told && !(told.why === "setting" && verdictOf(judged) === "Fail"))
        return {
          rule: "records-contradict",
          weight: STOPS.has(told.why) ? "stop" : "query",
          ...where(table, row, told.column),
          message: says[told.why](rowName(table, row), told.found, other.name, told.other),
          found: told.found,
          expected: told.other,
        };
    }
    return undefined;
  }).map(({ finding }) => finding);
}

interface Other {
  readonly judged: Row;
  /** Its sheet and what names it there. */
  readonly name: string;
}

/** The rows of the other kind by what they are of. */
function othersOf({ kind, other }: Against, { tables }: Context): ReadonlyMap<string, Other[]> {
  const others = new Map<string, Other[]>();
  for (const table of tables) {
    if (table.kind.id !== kind) continue;
    for (const { row, of } of ofRows(table, other)) {
      const one = {
        judged: table.judged[row] ?? {},
        name: `${table.table.sheet}, ${rowName(table, row)}`,
      };
      others.set(of, [...(others.get(of) ?? []), one]);
    }
  }
  return others;
}

const ofRows = ({ judged, aside }: JudgedTable, other: Against["other"]) =>
  judged.flatMap((one, row) => {
    const of = aside.has(row) ? undefined : other(one);
    return of === undefined ? [] : [{ row, of }];
  });
