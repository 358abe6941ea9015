import { serialDay } from "../../quantities/dates";
import { groupBy } from "../../quantities/groupedBy";
import { LINEUP } from "../../records/columns/common";
import { namedInstruments } from "../../records/instruments";
import { isBlank, type Row } from "../../records/kind";
import {
  type Context,
  dayOf,
  everyKind,
  type JudgedTable,
  type Rule,
  rowName,
  where,
} from "../context";
import type { Finding } from "../findings/finding";
import { panelsOf } from "../panelsOf";
import { personOf } from "../personOf";

/** At one minute in more places than this, the time is that of an export and not of a test. */
const MANY = 2;
const MINUTES = 24 * 60;

interface Test {
  readonly table: JudgedTable;
  readonly row: number;
  readonly panels: ReadonlySet<string>;
}

/** One instrument, or one person, that tested at two places at one minute. */
export const twoPlaces: Rule = {
  id: "two-places",
  reads: "book",
  of: everyKind,
  find: (context) => {
    const says = context.text.rules["two-places"];
    const told = new Set<string>();
    const once = context.tables.flatMap((table) => atOneTime(table, context));
    const apart = [...testsByMinute(context)].flatMap(([key, tests]): Finding[] => {
      const apart = placesApart(tests);
      const [first, other] = apart;
      if (!first || !other || apart.length > MANY) return [];
      const [who = "", minute = ""] = key.split("\u0000");
      const at = where(other.table, other.row, "date");
      if (told.has(`${at.sheet}${at.address}`)) return [];
      told.add(`${at.sheet}${at.address}`);
      return [
        {
          rule: "two-places",
          weight: "query",
          ...at,
          message: says.message(
            rowName(other.table, other.row),
            who,
            clock(Number(minute)),
            rowName(first.table, first.row),
          ),
          found: clock(Number(minute)),
        },
      ];
    });
    return [...apart, ...once];
  },
};

/** The hour that the origin of a reading gives it. */
const HOUR = /\bat (\d{1,2}):(\d{2})\b/;

/** The minute of a row's test, by its day or by where its reading comes from. */
function minuteOf({ date, origin }: Row): number | undefined {
  const day = dayOf(date);
  if (day === undefined) return undefined;
  if (!Number.isInteger(day)) return Math.round(day * MINUTES);
  const [, hours, minutes] = HOUR.exec(String(origin ?? "")) ?? [];
  return hours === undefined ? undefined : day * MINUTES + 60 * Number(hours) + Number(minutes);
}

/** Two tests of one table that each hold their instrument for a minute and more, and began at the same one. */
function atOneTime(table: JudgedTable, { text }: Context): Finding[] {
  const { minutes } = table.kind;
  if (!minutes) return [];
  const tests = table.rows.flatMap((stored, row) => {
    const minute = table.aside.has(row) ? undefined : minuteOf(stored);
    const [instrument, second] = namedInstruments(stored.instrument);
    const isAlone = instrument !== undefined && second === undefined && isBlank(stored.remarks);
    return minute === undefined || !isAlone || minutes(stored) < 1
      ? []
      : [{ row, minute, instrument }];
  });
  return groupBy(tests, ({ minute, instrument }) => `${minute} ${instrument}`).flatMap(
    ([first, other, ...more]): Finding[] =>
      !first || !other || more.length > 0
        ? []
        : [
            {
              rule: "two-places",
              weight: "query",
              ...where(table, other.row, "date"),
              message: text.rules["two-places"].once(
                rowName(table, other.row),
                other.instrument,
                clock(other.minute),
                rowName(table, first.row),
              ),
              found: clock(other.minute),
            },
          ],
  );
}

const clock = (minute: number): string => {
  const two = (part: number) => String(part).padStart(2, "0");
  const within = minute % MINUTES;
  return `${serialDay(Math.floor(minute / MINUTES))} ${two(Math.floor(within / 60))}:${two(within % 60)}`;
};

/** Tests with an hour, by their instrument or tester and their minute. */
function testsByMinute({ tables, lineup }: Context): ReadonlyMap<string, readonly Test[]> {
  const tests = new Map<string, Test[]>();
  for (const table of tables)
    for (const [row, stored] of table.rows.entries()) {
      const day = dayOf(stored.date);
      if (day === undefined || Number.isInteger(day) || table.aside.has(row)) continue;
      const panels = new Set(panelsOf(lineup, String(stored.object ?? LINEUP)));
      for (const who of testersOf(stored)) {
        const key = `${who}\u0000${Math.round(day * MINUTES)}`;
        tests.set(key, tests.get(key) ?? []);
        tests.get(key)?.push({ table, row, panels });
      }
    }
  return tests;
}

/** The instruments of a row, and who tested where that is one person. */
function testersOf(row: Row): string[] {
  const person = personOf(row);
  return [...namedInstruments(row.instrument), ...(person === undefined ? [] : [person])];
}

/** Tests of which no two share a panel, the first of each place. */
function placesApart(tests: readonly Test[]): Test[] {
  const apart: Test[] = [];
  for (const test of tests)
    if (!apart.some(({ panels }) => [...test.panels].some((panel) => panels.has(panel))))
      apart.push(test);
  return apart;
}
