import { expect, test } from "vitest";
import type { Lineup } from "../../src/lineup/lineup";
import type { Row } from "../../src/records/kind";
import { KINDS } from "../../src/records/kinds";
import { reportOf } from "../support/checkBook";
import { filledPlan, SOUND } from "../support/fill";
import { EARTH_BAR, equipped, longLineup } from "../support/lineups";
import { memoryBook } from "../support/memoryBook";

type Fill = typeof SOUND;
type Habit = (value: number, next: () => number, place: string) => number;

const TODAY = 46_352;

/** Entries of each table that an instrument shows, not what is set or belongs to the day. */
const shownIn = (table: string): ReadonlySet<string> =>
  new Set(
    KINDS.filter((kind) => kind.table === table)
      .flatMap(({ columns }) => columns)
      .filter(
        ({ role, need, wave, accepts }) =>
          role === "entry" && need === "reading" && wave === undefined && accepts?.type !== "date",
      )
      .map(({ id }) => id),
  );

/** Tables whose phases measure much alike. */
const POLES: ReadonlySet<string> = new Set(
  (["insulation", "contact", "currentTransformer", "cable"] as const).map(
    (id) => KINDS.find((kind) => kind.id === id)?.table ?? "",
  ),
);

/** What the phases of a part have in common; none where a table has no phases. */
const placeOf = (table: string, id: string, row: Row): string =>
  POLES.has(table) ? [table, id, row.object, row.part, row.stage].join(" ") : "";

/** The sound fill as another hand writes it: each reading by its habit. */
const byHand = (habit: Habit): Fill =>
  Object.fromEntries(
    Object.entries(SOUND).map(([table, fill]) => {
      const shown = shownIn(table);
      return [
        table,
        (row: Row, next: () => number) =>
          Object.fromEntries(
            Object.entries(fill(row, next) ?? {}).map(([id, value]) => [
              id,
              typeof value === "number" && shown.has(id)
                ? habit(value, next, placeOf(table, id, row))
                : value,
            ]),
          ),
      ];
    }),
  );

const figures = (value: number, digits: number) => Number(value.toPrecision(digits));

/** The first reading of a place, and others near it. */
function closeTogether(): Habit {
  const first = new Map<string, number>();
  return (value, next, place) => {
    if (place === "") return figures(value, 3);
    const centre = first.get(place) ?? value;
    first.set(place, centre);
    return figures(centre * (1 + 0.01 * (2 * next() - 1)), 3);
  };
}

/** Hands that write readings otherwise than the generator does (common practice): invented. */
const HANDS: Readonly<Record<string, Habit>> = {
  "three figures, as most instruments show": (value) => figures(value, 3),
  "all digits of a screen": (value, next) => figures(value * (1 + 1e-4 * next()), 6),
  "two figures, rounded": (value) => figures(value, 2),
  "phases that lie within a hundredth of each other": closeTogether(),
};

const lineupOf = (lineup: Lineup): Lineup => ({
  ...lineup,
  criteria: [
    ...lineup.criteria,
    { from: "project", quantity: "joint resistance µΩ", value: 50, document: "invented" },
    { from: "project", quantity: "insulation minimum MΩ", value: 2000, document: "invented" },
    {
      from: "project",
      quantity: "current transformer ratio error %",
      value: 1,
      document: "invented",
    },
    EARTH_BAR,
  ],
});

test.each(Object.entries(HANDS))(
  "%s: no more than one note for a hundred rows",
  (_name, habit) => {
    const lineup = lineupOf(equipped(longLineup(10, { basis: "IEC" })));
    const hand = byHand(habit);
    const { findings, counts } = reportOf(
      memoryBook(
        filledPlan(lineup, 23, {
          ...hand,
          GearWithstand: (row, next) => ({ ...hand.GearWithstand?.(row, next), applied: 22.4 }),
          GearExcitation: (row, next) => ({
            ...hand.GearExcitation?.(row, next),
            kneeLeast: row.kneeLeast ?? 60,
          }),
        }),
      ).snapshot,
      TODAY,
    );
    const rows = Object.values(counts).reduce((sum, one) => sum + one, 0);
    expect(findings.filter(({ weight }) => weight !== "note")).toEqual([]);
    expect(findings.length).toBeLessThanOrEqual(rows / 100);
  },
  60_000,
);
