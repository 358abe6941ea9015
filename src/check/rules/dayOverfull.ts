import { serialDay } from "../../quantities/dates";
import { memoizeFor } from "../../quantities/memoizeFor";
import { forAlike } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import type { RecordKind } from "../../records/kind";
import { type Context, dayOf, type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../finding";
import { personOf } from "../personOf";

/** An instrument works at most all day, and a person sixteen hours of it (common practice, no source). */
const MOST = { instrument: 24 * 60, person: 16 * 60 } as const;
type Who = keyof typeof MOST;

const isTimed = ({ minutes }: RecordKind) => minutes !== undefined;

/** More testing by one person, or with one instrument, than a day holds, by what the records themselves last. */
export const dayOverfull: Rule = {
  id: "day-overfull",
  reads: "book",
  of: isTimed,
  find: (context) => {
    const says = context.text.rules["day-overfull"];
    return [...daysOf(context).values()].flatMap((day): Finding[] => {
      const { table, row, who, name, date } = day;
      if (day.minutes <= MOST[who]) return [];
      const hours = (day.minutes / 60).toFixed(1);
      const message = says[who](rowName(table, row), name, serialDay(date), day.records, hours);
      return [
        {
          rule: "day-overfull",
          weight: "query",
          ...where(table, row, who === "person" ? "by" : "instrument"),
          message,
          found: `${hours} h`,
        },
      ];
    });
  },
};

/** What the records of a day come to for one person or instrument; where the first of them stands. */
interface Day {
  readonly table: JudgedTable;
  readonly row: number;
  readonly who: Who;
  readonly name: string;
  readonly date: number;
  minutes: number;
  records: number;
}

function daysOf({ tables }: Context): ReadonlyMap<string, Day> {
  const days = new Map<string, Day>();
  for (const table of tables.filter(({ kind }) => isTimed(kind)))
    for (const [key, one] of daysIn(table)) {
      const day = days.get(key);
      if (day) {
        day.minutes += one.minutes;
        day.records += one.records;
      } else days.set(key, { ...one });
    }
  return days;
}

const daysIn = memoizeFor((table: JudgedTable): ReadonlyMap<string, Day> => {
  const days = new Map<string, Day>();
  const namesIn = forAlike(table.rows, ["instrument"], (row) => namedInstruments(row.instrument));
  const personIn = forAlike(table.rows, ["by"], personOf);
  for (const [row, stored] of table.rows.entries()) {
    const date = table.aside.has(row) ? undefined : dayOf(stored.date);
    const minutes = date === undefined ? 0 : (table.kind.minutes?.(stored) ?? 0);
    // One that took longer than a day by itself is a soak, or a slip of which another rule tells.
    if (date === undefined || minutes === 0 || minutes > MOST.instrument) continue;
    const add = (who: Who, name: string) => {
      const key = `${Math.floor(date)}\u0000${who}\u0000${name.toLowerCase()}`;
      const day = days.get(key);
      if (day) {
        day.minutes += minutes;
        day.records += 1;
      } else days.set(key, { table, row, who, name, date: Math.floor(date), minutes, records: 1 });
    };
    const person = personIn(row);
    if (person !== undefined && minutes <= LONGEST_ATTENDED) add("person", person);
    for (const name of namesIn(row)) add("instrument", name);
  }
  return days;
});

/** Longer tests, as a battery's discharge, go on while their tester does others. */
const LONGEST_ATTENDED = 4 * 60;
