import { bare } from "../../lineup/lineup";
import { serialDay } from "../../quantities/dates";
import { forAlike } from "../../records/cellsOf";
import { LINEUP } from "../../records/columns/common";
import { isBlank, type RecordKind, verdictOf } from "../../records/kind";
import { kindWords } from "../../records/kindWords";
import { exactly } from "../../records/quantity";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  type Rule,
  rowName,
  where,
  withRole,
} from "../context";
import type { Finding } from "../findings/finding";
import { panelsOf } from "../panelsOf";

/** A test above this is one at high voltage (IEC 61936-1: above 1 kV AC; from memory). */
const HIGH_KV = 1.5;
/** How a permit for such tests is called. */
const FOR_TESTS = /high.?voltage|\bhv\b|sanction|hochspannung|haute tension|alta tens/i;

const isPermit = withRole("permit");

/** A permit with the days that it holds for. */
interface Permit {
  readonly table: JudgedTable;
  readonly row: number;
  readonly name: string;
  readonly forTests: boolean;
  readonly panels: ReadonlySet<string>;
  readonly from: number;
  /** Up to but not including. */
  readonly until: number;
}

/** A record of work that no permit covers. */
interface Uncovered {
  readonly table: JudgedTable;
  readonly row: number;
  readonly day: number;
  readonly name: string;
  /** The last permit of its sort before it. */
  readonly before: Permit | undefined;
  /** Where there is none: the first of its sort after it. */
  readonly after: Permit | undefined;
}

/** Records of work on the gear on a day that no permit covers: told at the rows, or at the permit where several kinds of records lie after its end. */
export const permitLacking: Rule = {
  id: "permit-lacking",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const permits = permitsIn(context);
    const tests = permits.filter(({ forTests }) => forTests);
    const works = permits.filter(({ forTests }) => !forTests);
    const twice = sameNumbers(context);
    if (permits.length === 0) return twice;
    const needs: Needs = {
      first: Math.floor(Math.min(...permits.map(({ from }) => from))),
      ofWork: nearTo(works.length > 0 ? works : tests, context),
      ofTests: nearTo(tests.length > 0 ? tests : works, context),
    };
    const uncovered = context.tables
      .filter(({ kind: { step } }) => step !== undefined && step !== "receipt")
      .flatMap((table) => uncoveredIn(table, needs));
    return [...twice, ...groupsOf(uncovered).flatMap((group) => findingsOf(group, context))];
  },
};

/** Permits of two sorts that have one number; a further day's permit of the same sort may keep its own. */
function sameNumbers({ tables, text }: Context): Finding[] {
  return tables
    .filter(({ kind }) => isPermit(kind))
    .flatMap((table) =>
      table.rows.flatMap(({ number, part }, row): Finding[] => {
        if (isBlank(number) || isBlank(part)) return [];
        const other = table.rows
          .slice(0, row)
          .find(
            (earlier) =>
              !isBlank(earlier.part) &&
              bare(String(earlier.part)) !== bare(String(part)) &&
              bare(String(earlier.number ?? "")) === bare(String(number)),
          );
        if (!other) return [];
        return [
          {
            rule: "permit-lacking",
            weight: "query",
            ...where(table, row, "number"),
            message: text.rules["permit-lacking"].sameNumber(
              rowName(table, row),
              String(number),
              String(other.part),
            ),
            found: String(number),
          },
        ];
      }),
    );
}

const permitsIn = ({ tables, lineup }: Context): Permit[] =>
  tables
    .filter(({ kind }) => isPermit(kind))
    .flatMap((table) =>
      table.rows.flatMap((row, at): Permit[] => {
        const [from, to] = [dayOf(row.from), dayOf(row.to)];
        if (from === undefined || to === undefined || isBlank(row.number)) return [];
        const about = String(row.object ?? LINEUP);
        return [
          {
            table,
            row: at,
            name: String(row.part ?? ""),
            forTests: FOR_TESTS.test(String(row.part ?? "")),
            panels: new Set(panelsOf(lineup, about)),
            from,
            until: Number.isInteger(to) ? to + 1 : to,
          },
        ];
      }),
    );

/** Finds the permits that hold for what a record is about. */
type Near = (object: string) => readonly Permit[];

interface Needs {
  /** The first day of any permit: before it nobody kept them. */
  readonly first: number;
  readonly ofWork: Near;
  /** Of tests at high voltage. */
  readonly ofTests: Near;
}

const nearTo = (permits: readonly Permit[], { lineup }: Context): Near => {
  const ofPanels = new Map<string, Permit[]>();
  for (const permit of permits)
    for (const panel of permit.panels) {
      const some = ofPanels.get(panel);
      if (some) some.push(permit);
      else ofPanels.set(panel, [permit]);
    }
  const asked = new Map<string, readonly Permit[]>();
  return (object) => {
    const before = asked.get(object);
    if (before) return before;
    const some = new Set(panelsOf(lineup, object).flatMap((panel) => ofPanels.get(panel) ?? []));
    const near = permits.filter((permit) => some.has(permit));
    asked.set(object, near);
    return near;
  };
};

/** Rows of a table that are recorded on a day that none of the permits covers. */
function uncoveredIn(table: JudgedTable, { first, ofWork, ofTests }: Needs): Uncovered[] {
  const highkV = highVoltages(table.kind);
  const lacking = forAlike(
    table.judged,
    ["result", "date", ...highkV, "object"],
    (judged): Omit<Uncovered, "table" | "row"> | undefined => {
      const day = dayOf(judged.date);
      if (day === undefined || verdictOf(judged) === "Missing") return undefined;
      const isHigh = highkV.some((id) => (exactly(judged[id], "kV") ?? 0) > HIGH_KV);
      const near = (isHigh ? ofTests : ofWork)(String(judged.object ?? LINEUP));
      if (near.length === 0 || day < first) return undefined;
      if (near.some((permit) => covers(permit, day))) return undefined;
      const before = near
        .filter(({ until }) => until <= day)
        .sort((one, other) => other.until - one.until)[0];
      const after = before
        ? undefined
        : [...near].sort((one, other) => one.from - other.from).find(({ from }) => from > day);
      return { day, name: near[0]?.name ?? "", before, after };
    },
  );
  return table.judged.flatMap((_judged, row): Uncovered[] => {
    const one = lacking(row);
    return one && !table.aside.has(row) ? [{ ...one, table, row }] : [];
  });
}

/** A day without an hour is covered by a permit of any hour of it. */
const covers = ({ from, until }: Permit, day: number): boolean =>
  Number.isInteger(day) ? day >= Math.floor(from) && day < until : day >= from && day < until;

const highVoltages = ({ columns }: RecordKind): string[] =>
  columns
    .filter(({ role, unit, wave }) => role === "entry" && unit === "kV" && wave !== undefined)
    .map(({ id }) => id);

/** Records after the end of one permit or before the first day of one, or of one table and day where there is none. */
function groupsOf(uncovered: readonly Uncovered[]): readonly (readonly Uncovered[])[] {
  const groups = new Map<string, Uncovered[]>();
  for (const one of uncovered) {
    const { before, after, table, day } = one;
    const permit = before ?? after;
    const key = permit
      ? `${permit.table.table.name} ${permit.row} ${before === undefined}`
      : `${table.table.name} ${day}`;
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(one);
  }
  return [...groups.values()];
}

function findingsOf(group: readonly Uncovered[], { text }: Context): Finding[] {
  const says = text.rules["permit-lacking"];
  const { before, after } = group[0] ?? {};
  const tables = [...new Set(group.map(({ table }) => table))];
  const permit = before ?? after;
  if (permit && tables.length > 1) {
    const held = serialDay(before ? permit.until - 1 : permit.from);
    return [
      {
        rule: "permit-lacking",
        weight: "stop",
        ...where(permit.table, permit.row, before ? "to" : "from"),
        message: (before ? says.permit : says.notYet)(
          rowName(permit.table, permit.row),
          held,
          [...new Set(group.map(({ day }) => serialDay(day)))].sort(),
          tables.map(({ kind }) => kindWords(text, kind.id).title),
        ),
        found: held,
      },
    ];
  }
  const days = new Map(
    group.map((one) => [`${one.table.table.name} ${one.day}`, one] as const).reverse(),
  );
  return [...days.values()].reverse().map(({ table, row, day, name }): Finding => {
    const further = group.filter(
      (one) => one.table === table && one.day === day && one.row !== row,
    );
    const message = says.row(rowName(table, row), serialDay(day), name);
    const named = further.slice(0, 5).map((one) => where(one.table, one.row, "date").address);
    return {
      rule: "permit-lacking",
      weight: "stop",
      ...where(table, row, "date"),
      message: further.length > 0 ? text.furtherRows(message, further.length, named) : message,
      found: serialDay(day),
    };
  });
}
