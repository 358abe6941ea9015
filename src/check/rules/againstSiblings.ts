import { alikeRows } from "../../records/cellsOf";
import { keyIds } from "../../records/kind";
import { robust } from "../among/similar";
import { type JudgedTable, type Rule, rowName, said, where } from "../context";
import type { Finding } from "../findings/finding";

/** Others of one make from which on their order is a habit. */
const OTHERS = 4;
/** The share that two must lie apart by to have an order, and times the spread of all that they lie apart. */
const CLEAR = 0.03;
const FAR = 3;

/** Two quantities of one device that stand the other way round than in all its siblings. */
export const againstSiblings: Rule = {
  id: "against-siblings",
  reads: "table",
  find: (table, { text }) => {
    if (!table.at.has("quantity") || !table.at.has("reading")) return [];
    const says = text.rules["against-siblings"];
    return pairsIn(table).flatMap((pairs): Finding[] => {
      const odd = oddOne(pairs);
      if (!odd) return [];
      const [one, other] = odd.rows;
      const named = ([row, value]: readonly [number, number]) =>
        `${String(table.rows[row]?.quantity ?? "")} ${said(value)}`;
      return [
        {
          rule: "against-siblings",
          weight: "query",
          ...where(table, one, "reading"),
          message: says.message(
            rowName(table, one),
            named([one, odd.values[0]]),
            named([other, odd.values[1]]),
            where(table, other, "reading").address,
            pairs.length - 1,
          ),
          found: said(odd.values[0]),
        },
      ];
    });
  },
};

/** Two readings of one device: their rows, and what they are. */
interface Pair {
  readonly rows: readonly [number, number];
  readonly values: readonly [number, number];
}

/** The pairs of quantities of one unit, of devices with the same limits, each of all its devices. */
function pairsIn(table: JudgedTable): readonly (readonly Pair[])[] {
  const sorts = new Map<string, Pair[]>();
  const keys = keyIds(table.kind).filter((id) => id !== "quantity");
  for (const rows of alikeRows(table.rows, keys, table.aside))
    for (const [at, one] of rows.entries())
      for (const other of rows.slice(at + 1)) {
        const sort = sortOf(table, one, other);
        const pairs = sorts.get(sort) ?? [];
        sorts.set(sort, pairs);
        pairs.push(...pairOf(table, one, other));
      }
  return [...sorts.values()].filter(({ length }) => length > OTHERS);
}

/** What two rows of a device are of: of other devices only the same are compared. */
const sortOf = ({ judged }: JudgedTable, ...rows: readonly number[]): string =>
  JSON.stringify(
    rows.map((row) => {
      const { quantity, pole, least, most } = judged[row] ?? {};
      return [quantity, pole, least, most];
    }),
  );

/** Two rows of a device as a pair, where both are numbers of one unit. */
function pairOf({ judged }: JudgedTable, one: number, other: number): Pair[] {
  const [first, then] = [judged[one] ?? {}, judged[other] ?? {}];
  return typeof first.reading === "number" &&
    typeof then.reading === "number" &&
    first.inUnit === then.inUnit
    ? [{ rows: [one, other], values: [first.reading, then.reading] }]
    : [];
}

/** The one of the pairs that clearly stands the other way round than all others, which clearly have one order. */
function oddOne(pairs: readonly Pair[]): Pair | undefined {
  const logs = pairs.map(({ values: [one, other] }) =>
    one > 0 && other > 0 ? Math.log(one / other) : 0,
  );
  if (logs.some((log) => Math.abs(log) < CLEAR)) return undefined;
  const isOdd = (sign: number) => logs.filter((log) => Math.sign(log) === sign).length === 1;
  const sign = [1, -1].find(isOdd);
  if (sign === undefined) return undefined;
  const { centre, spread } = robust(logs.filter((log) => Math.sign(log) !== sign));
  return Math.abs(centre) > FAR * spread
    ? pairs[logs.findIndex((log) => Math.sign(log) === sign)]
    : undefined;
}
