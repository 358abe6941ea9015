import type { FindingsText } from "../../messages/messages";
import type { Row } from "../../records/kind";
import { a1 } from "../../sheets/cells/address";
import type { Stated } from "../../sheets/snapshot";
import { decimals } from "../among/similar";
import { spreadOf } from "../among/spreads";
import { headerOf, type JudgedTable, type Rule, rowName, said, shown, where } from "../context";
import type { Finding } from "../findings/finding";
import { addressesFrom } from "../formulas/fromItsRow";

/** A value worked out with a factor of two figures departs from ours by no more than this (practice). */
const ROUNDING = 0.02;
/** Cells that a finding names one by one, and ways of departing that are told apart. */
const NAMED = 5;
const SEVERAL = 3;

interface Cell extends Stated {
  readonly at: number;
  readonly wanted: unknown;
}

/** A limit, corrected value or result that a layout of somebody's own states, and what it is compared with. */
export const statedDiffers: Rule = {
  id: "stated-differs",
  reads: "table",
  find: (table, { text }) => {
    const { stated } = table.table.ownLayout ?? {};
    if (stated === undefined) return [];
    const columns = new Map<string, Cell[]>();
    for (const at of table.rows.keys())
      if (!table.aside.has(at))
        for (const [id, cell] of stated(at)) {
          const cells = columns.get(id) ?? [];
          columns.set(id, cells);
          cells.push({ ...cell, at, wanted: table.judged[at]?.[id] });
        }
    return [...columns].flatMap(([id, cells]) => {
      const findings = departures(table, id, cells, text);
      const told = new Set(findings.map(({ address }) => address));
      const unlike = [...unlikeOthers(cells)].filter(([cell]) => !told.has(placeOf(cell)));
      return [
        ...findings,
        ...unlike.map(([cell, most]) => unlikeFinding(table, id, cell, most, text)),
      ];
    });
  },
};

/** What the cells of a column state and the record does not come to. */
const departures = (
  table: JudgedTable,
  id: string,
  cells: readonly Cell[],
  text: FindingsText,
): Finding[] => {
  if (id === "result") return results(table, id, cells, text);
  if (id === table.kind.spread?.column) return spreads(table, id, cells, text);
  if (id === "error") return errors(table, id, cells, text);
  return numbers(table, id, cells, text);
};

const placed = (table: JudgedTable, id: string, { at, row, column }: Cell) => ({
  rule: "stated-differs",
  ...where(table, at, id),
  address: a1(row, column),
});

/** The side of a limit on which a reading is right, undefined for what is no limit. */
const sideOf = ({ kind }: JudgedTable, id: string): "most" | "least" | undefined => {
  const senses = [...kind.accepted, ...kind.enough].flatMap(({ limit, sense }) =>
    limit === id && (sense === "least" || sense === "most") ? sense : [],
  );
  return kind.columns.find((column) => column.id === id)?.side ?? senses[0];
};

/** A pass beside a record that fails; a fail beside one that passes, where the word is for that record alone. */
const results = (
  table: JudgedTable,
  id: string,
  cells: readonly Cell[],
  text: FindingsText,
): Finding[] => {
  const places = counted(cells);
  const passes = cells.filter(({ value, wanted }) => value === "Pass" && wanted === "Fail");
  const fails = cells.filter(
    (cell) => cell.value === "Fail" && cell.wanted === "Pass" && places.get(placeOf(cell)) === 1,
  );
  const finding = (cell: Cell, others: readonly Cell[]): Finding => ({
    ...placed(table, id, cell),
    weight: cell.value === "Pass" ? "stop" : "query",
    message: text.rules["stated-differs"].result(
      rowName(table, cell.at),
      cell.value === "Pass",
      shown(String(cell.wanted), text),
      ...alsoAt(cell, others),
    ),
    found: String(cell.value),
    expected: String(cell.wanted),
  });
  return [
    ...passes.map((cell) => finding(cell, [])),
    ...fails.slice(0, 1).map((cell) => finding(cell, fails)),
  ];
};

/** How many records each cell is of. */
const counted = (cells: readonly Cell[]): ReadonlyMap<string, number> => {
  const places = new Map<string, number>();
  for (const cell of cells) places.set(placeOf(cell), (places.get(placeOf(cell)) ?? 0) + 1);
  return places;
};

const placeOf = ({ row, column }: Cell): string => a1(row, column);

/** The other cells of which the same is said: some by name, and how many more there are. */
const alsoAt = (first: Cell, cells: readonly Cell[]): [named: string[], more: number] => {
  const others = [...new Set(cells.map(placeOf))].filter((place) => place !== placeOf(first));
  const named = others.slice(0, NAMED);
  return [named, others.length - named.length];
};

/** Numbers that depart from what the record comes to: those that depart alike are one finding. */
const numbers = (
  table: JudgedTable,
  id: string,
  cells: readonly Cell[],
  text: FindingsText,
): Finding[] => {
  const softer = sideOf(table, id);
  const isLimit = table.kind.columns.find((column) => column.id === id)?.role === "limit" || softer;
  const groups = new Map<string, Cell[]>();
  for (const cell of cells) {
    const { value, wanted } = cell;
    if (typeof value !== "number" || typeof wanted !== "number" || wanted === 0) continue;
    if (Math.abs(value / wanted - 1) <= (isLimit ? 1e-3 : ROUNDING)) continue;
    const key = isLimit ? `${value} ${wanted}` : (value / wanted).toPrecision(3);
    const group = groups.get(key) ?? [];
    groups.set(key, group);
    group.push(cell);
  }
  // Cells that depart each in its own way have one cause, such as rows that were moved.
  const told = groups.size > SEVERAL && !isLimit ? [[...groups.values()].flat()] : groups.values();
  return [...told].map((group) =>
    isLimit ? otherLimit(table, id, group, text) : otherValue(table, id, group, text),
  );
};

const otherLimit = (
  table: JudgedTable,
  id: string,
  group: readonly Cell[],
  text: FindingsText,
): Finding => {
  const softer = sideOf(table, id);
  const [first] = group as [Cell];
  const [value, wanted] = [Number(first.value), Number(first.wanted)];
  const isSofter = softer === "least" ? value < wanted : softer === "most" && value > wanted;
  const judged: Row = table.judged[first.at] ?? {};
  return {
    ...placed(table, id, first),
    weight: isSofter ? "stop" : "note",
    message: text.rules["stated-differs"].limit(
      rowName(table, first.at),
      headerOf(table, id),
      said(value),
      said(wanted),
      isSofter,
      ...alsoAt(first, group),
    ),
    found: said(value),
    expected: said(wanted),
    source: String(judged.sources ?? ""),
  };
};

const otherValue = (
  table: JudgedTable,
  id: string,
  group: readonly Cell[],
  text: FindingsText,
): Finding => {
  const [first] = group as [Cell];
  const [value, wanted] = [Number(first.value), Number(first.wanted)];
  const times = said(Number((value / wanted).toPrecision(3)));
  return {
    ...placed(table, id, first),
    weight: "query",
    message: text.rules["stated-differs"].value(
      rowName(table, first.at),
      headerOf(table, id),
      said(value),
      said(wanted),
      times,
      ...alsoAt(first, group),
    ),
    found: said(value),
    expected: said(wanted),
  };
};

/** Spreads that the poles of their group do not come to, neither as per cent nor as a share. */
const spreads = (
  table: JudgedTable,
  id: string,
  cells: readonly Cell[],
  text: FindingsText,
): Finding[] => {
  const off = cells.flatMap((cell) => {
    const spread = spreadOf(table, cell.at);
    const value = Number(cell.value);
    const near = (stated: number) =>
      spread?.right.some(
        (right) => Math.abs(stated - right) <= Math.max(ROUNDING * right, spread.step / 2 + 1e-9),
      );
    const isRight =
      spread === undefined || near(value) || (spread.unit === "%" && near(100 * value));
    return isRight ? [] : [{ cell, spread, value }];
  });
  // A cell of several poles is right where it is so for one.
  const [all, wrong] = [counted(cells), counted(off.map(({ cell }) => cell))];
  const once = [...new Map(off.map((one) => [placeOf(one.cell), one])).values()].filter(
    ({ cell }) => wrong.get(placeOf(cell)) === all.get(placeOf(cell)),
  );
  return once.map(
    ({ cell, spread: { wanted, unit }, value }): Finding => ({
      ...placed(table, id, cell),
      weight: "query",
      message: text.rules["stated-differs"].spread(
        rowName(table, cell.at),
        said(value),
        said(Number(wanted.toPrecision(3))),
        unit,
      ),
      found: said(value),
      expected: said(Number(wanted.toPrecision(3))),
    }),
  );
};

/** Errors of ratio, meter or relay that the row's own readings do not come to, beyond the last figure that is stated. */
const errors = (
  table: JudgedTable,
  id: string,
  cells: readonly Cell[],
  text: FindingsText,
): Finding[] =>
  cells.flatMap((cell): Finding[] => {
    const { value, wanted } = cell;
    if (typeof value !== "number" || typeof wanted !== "number") return [];
    const rounding = 10 ** -decimals(value) / 2 + 1e-9;
    if (Math.abs(value - wanted) <= Math.max(rounding, ROUNDING * Math.abs(wanted))) return [];
    return [
      {
        ...placed(table, id, cell),
        weight: "query",
        message: text.rules["stated-differs"].error(
          rowName(table, cell.at),
          headerOf(table, id),
          said(value),
          said(Number(wanted.toPrecision(3))),
        ),
        found: said(value),
        expected: said(Number(wanted.toPrecision(3))),
      },
    ];
  });

/** Cells whose formula, as it reads from its own row, is none of the most; or that hold none among formulas. */
const unlikeOthers = (cells: readonly Cell[]): Map<Cell, string> => {
  const alone = [...new Map(cells.map((cell) => [placeOf(cell), cell])).values()];
  const read = ({ formula, row }: Cell) => (formula ? addressesFrom(formula, row + 1) : "");
  const counts = new Map<string, number>();
  for (const cell of alone) counts.set(read(cell), (counts.get(read(cell)) ?? 0) + 1);
  const [most] = [...counts].sort(([, one], [, other]) => other - one);
  if (!most || most[0] === "" || most[1] < 3 || most[1] * 2 <= alone.length) return new Map();
  const like = alone.find((cell) => read(cell) === most[0]);
  return new Map(
    alone.flatMap((cell) => (read(cell) === most[0] ? [] : [[cell, like?.formula ?? ""] as const])),
  );
};

const unlikeFinding = (
  table: JudgedTable,
  id: string,
  cell: Cell,
  most: string,
  text: FindingsText,
): Finding => ({
  ...placed(table, id, cell),
  weight: "query",
  message: text.rules["stated-differs"]
    .unlike(rowName(table, cell.at), headerOf(table, id), cell.formula, most)
    .slice(0, 500),
  found: cell.formula ? `=${cell.formula}`.slice(0, 200) : String(cell.value),
});
