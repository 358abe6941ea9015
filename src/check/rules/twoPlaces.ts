import { serialDay } from "../../quantities/dates";
import { LINEUP } from "../../records/columns/common";
import { namedInstruments } from "../../records/instruments";
import type { Row } from "../../records/kind";
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
    return [...testsByMinute(context)].flatMap(([key, tests]): Finding[] => {
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
  },
};

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
