import { type Finding, isOpen, type Weight } from "../check/findings/finding";
import { areaAddress, cellCount, readArea } from "../sheets/cells/area";

/** Place and size of a table on its sheet, header row included. */
export interface Rectangle {
  readonly top: number;
  readonly left: number;
  readonly rows: number;
  readonly columns: number;
}

/** From the lightest to the heaviest: the heaviest comes to lie on top. */
const WEIGHTS: readonly Weight[] = ["note", "query", "stop"];
/** Longest list of addresses that Excel takes, less a margin. */
const ADDRESS_LENGTH = 8_000;

/** Areas of one weight, of whole rows or of single cells. */
export interface Mark {
  readonly weight: Weight;
  readonly whole: boolean;
  readonly areas: readonly string[];
  /** Rows or cells. */
  readonly count: number;
}

/** What is to be marked on one sheet of the findings that are open, rows before cells and light before heavy. */
export function marksOn(findings: readonly Finding[], tables: readonly Rectangle[]): Mark[] {
  const cells = new Map<string, { row: number; column: number; weight: Weight }>();
  const rows = new Map<string, { row: number; table: Rectangle; weight: Weight }>();
  const cellsOf = ({ address, further = [], weight }: Finding) =>
    [address, ...further].map((cell) => ({ address: cell, weight }));
  for (const { address, weight } of findings.filter(isOpen).flatMap(cellsOf)) {
    const place = placeOf(address);
    if (!place) continue;
    cells.set(address, { ...place, weight: heavier(weight, cells.get(address)?.weight) });
    const table = tables.find(
      ({ top, left, rows, columns }) =>
        place.row > top &&
        place.row < top + rows &&
        place.column >= left &&
        place.column < left + columns,
    );
    if (!table) continue;
    const key = `${place.row},${table.left}`;
    rows.set(key, { row: place.row, table, weight: heavier(weight, rows.get(key)?.weight) });
  }
  return [true, false].flatMap((whole) =>
    WEIGHTS.flatMap((weight): Mark[] => {
      const spans = whole
        ? [...rows.values()]
            .filter((one) => one.weight === weight)
            .map(({ row, table: { left, columns } }) => ({ row, left, right: left + columns - 1 }))
        : [...cells.values()]
            .filter((one) => one.weight === weight)
            .map(({ row, column }) => ({ row, left: column, right: column }));
      return spans.length > 0 ? [{ weight, whole, areas: joined(spans), count: spans.length }] : [];
    }),
  );
}

const heavier = (one: Weight, other: Weight | undefined): Weight =>
  other && WEIGHTS.indexOf(other) > WEIGHTS.indexOf(one) ? other : one;

const placeOf = (address: string): { row: number; column: number } | undefined => {
  const area = readArea(address);
  return area && cellCount(area) === 1 ? { row: area.top, column: area.left } : undefined;
};

/** Addresses of spans of cells, those right below each other as one. */
function joined(spans: readonly { row: number; left: number; right: number }[]): string[] {
  const areas: { top: number; bottom: number; left: number; right: number }[] = [];
  for (const { row, left, right } of [...spans].sort(
    (one, other) => one.left - other.left || one.right - other.right || one.row - other.row,
  )) {
    const last = areas.at(-1);
    if (last?.left === left && last.right === right && last.bottom + 1 === row) last.bottom = row;
    else areas.push({ top: row, bottom: row, left, right });
  }
  return areas.map(areaAddress);
}

/** Lists of addresses, as few as their allowed length asks for. */
export function addressLists(areas: readonly string[]): string[] {
  const lists: string[] = [];
  for (const area of areas) {
    const last = lists.at(-1);
    if (last !== undefined && last.length + area.length < ADDRESS_LENGTH)
      lists[lists.length - 1] = `${last},${area}`;
    else lists.push(area);
  }
  return lists;
}
