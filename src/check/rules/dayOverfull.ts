import { serialDay } from "../../quantities/dates";
import { memoizeFor } from "../../quantities/memoizeFor";
import { forAlike } from "../../records/cellsOf";
import { namedInstruments } from "../../records/instruments";
import { isBlank, type RecordKind } from "../../records/kind";
import { type Context, dayOf, type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { personOf } from "../personOf";

/** An instrument works at most all day, a person sixteen hours of it, and voltage is on for ten of them where it has to be watched (common practice, no source). */
const MOST = { instrument: 24 * 60, person: 16 * 60, watched: 10 * 60 } as const;
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
    const { date, minutes } = timeOf(table, row);
    // One that took longer than a day by itself is a soak, or a slip of which another rule tells.
    if (minutes === 0 || minutes > MOST.instrument) continue;
    const add = (who: Who, name: string, held = minutes) =>
      addTo(days, { table, row, who, name, date, minutes: held, records: 1 });
    const names = namesIn(row);
    for (const name of isWatched(table, row, names.length) ? names : [])
      add("watched", name, table.kind.watched?.(stored));
    const person = personIn(row);
    if (person !== undefined && minutes <= LONGEST_ATTENDED) add("person", person);
    for (const name of names) add("instrument", name);
  }
  return days;
});

/** The day of a row, and how long it took; 0 where it has no day or does not tell. */
function timeOf({ kind, rows, aside }: JudgedTable, row: number) {
  const stored = rows[row] ?? {};
  const date = aside.has(row) ? undefined : dayOf(stored.date);
  return date === undefined
    ? { date: 0, minutes: 0 }
    : { date: Math.floor(date), minutes: kind.minutes?.(stored) ?? 0 };
}

function addTo(days: Map<string, Day>, one: Day): void {
  const key = `${one.date}\u0000${one.who}\u0000${one.name.toLowerCase()}`;
  const day = days.get(key);
  if (day) {
    day.minutes += one.minutes;
    day.records += one.records;
  } else days.set(key, one);
}

/** Whether voltage was watched with one set; of phases that were tested together, or with a second set, a remark or a second instrument tells. */
function isWatched({ kind, rows }: JudgedTable, row: number, instruments: number): boolean {
  const stored = rows[row] ?? {};
  const minutes = instruments === 1 && isBlank(stored.remarks) ? (kind.watched?.(stored) ?? 0) : 0;
  return minutes > 0 && minutes <= LONGEST_ATTENDED;
}

/** Longer tests, as a battery's discharge, go on while their tester does others. */
const LONGEST_ATTENDED = 4 * 60;
