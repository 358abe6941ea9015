import type { FindingsText } from "../../messages/messages";
import { alikeIn, cellsOf } from "../../records/cellsOf";
import { keyIds } from "../../records/kind";
import { chanceIn, seldom, type Tally, tallyOf, together } from "../among/chance";
import { type JudgedTable, type Rule, rowName, where } from "../context";
import type { Finding } from "../findings/finding";
import { UNLIKELY } from "./samePhases";
import { partsOf, type Reckoning, reckoningOf, SELDOM } from "./sameRun";

/** So many readings after that are those before are told. */
const LEAST = 2;
/** Two may be so by accident, however seldom that is: they are a note. */
const MANY = 3;
const STAGE = "stage";

/** Readings after the withstand test that are digit for digit those before it. */
export const afterAsBefore: Rule = {
  id: "after-as-before",
  reads: "table",
  find: (table, { text }) => {
    if (!keyIds(table.kind).includes(STAGE)) return [];
    const reckoning = reckoningOf(table);
    const pairs = pairsOf(table, reckoning);
    const all = [...pairs.values()].flat();
    if (all.filter(isSame).length < LEAST) return [];
    const tallies = reckoning.columns.map((_, column) => tallyIn(all, column, reckoning));
    return partsOf(table).flatMap((rows) => {
      const own = rows.flatMap((row) => pairs.get(row) ?? []);
      return own.length < LEAST ? [] : ofPart(own, all.length, tallies, reckoning, text);
    });
  },
};

/** A reading after and the one before at the same place. */
interface Pair {
  readonly row: number;
  readonly column: number;
  readonly before: number;
  readonly after: number;
}

/** By the row of the reading after. */
function pairsOf(table: JudgedTable, { columns, read }: Reckoning): ReadonlyMap<number, Pair[]> {
  const ids = keyIds(table.kind).filter((id) => id !== STAGE);
  const place = alikeIn(table.rows, ids).group;
  const stages = cellsOf(table.rows, STAGE);
  const before = new Map<number | undefined, number>();
  stages.forEach((stage, row) => {
    if (stage === "before") before.set(place[row], row);
  });
  return new Map(
    stages.flatMap((stage, row) => {
      const was = stage === "after" ? before.get(place[row]) : undefined;
      if (was === undefined || table.aside.has(row)) return [];
      const pairs = [...columns.keys()].flatMap((column): Pair[] => {
        const [one, other] = [read(was, column), read(row, column)];
        return typeof one === "number" && typeof other === "number"
          ? [{ row, column, before: one, after: other }]
          : [];
      });
      return [[row, pairs] as const];
    }),
  );
}

/** How near the readings before and after lie in a column. */
function tallyIn(pairs: readonly Pair[], column: number, { grains }: Reckoning): Tally {
  const grain = grains[column];
  const some = grain ? pairs.filter((pair) => pair.column === column) : [];
  return together(grain ? some.map(({ before, after }) => tallyOf([before, after], grain)) : []);
}

/** @param all how many readings after the test there are in the table, and how near they lie to those before */
function ofPart(
  own: readonly Pair[],
  all: number,
  tallies: readonly Tally[],
  reckoning: Reckoning,
  text: FindingsText,
): Finding[] {
  const { table, columns } = reckoning;
  const same = own.filter(isSame);
  const [first] = same;
  const tally = tallies[first?.column ?? -1];
  if (!first || !tally || same.length < LEAST) return [];
  const chance = chanceIn(together([tally], [tallyIn(own, first.column, reckoning)]));
  const expected = (all / own.length) * choose(own.length, same.length) * chance ** same.length;
  if (expected >= UNLIKELY) return [];
  return [
    {
      rule: "after-as-before",
      weight: expected < SELDOM && same.length >= MANY ? "query" : "note",
      ...where(table, first.row, columns[first.column]?.id ?? ""),
      message: text.rules["after-as-before"].message(
        rowName(table, first.row),
        same.length,
        own.length,
        seldom(expected),
      ),
      found: same.length,
    },
  ];
}

const isSame = ({ before, after }: Pair) => before === after;

/** Ways to choose so many of a number. */
const choose = (count: number, some: number): number => {
  let ways = 1;
  for (let one = 1; one <= some; one++) ways *= (count - some + one) / one;
  return ways;
};
