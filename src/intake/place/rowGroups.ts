import type { CellValue } from "../../records/kind";
import type { RecordRows } from "../rows/recordRows";
import type { Arrival } from "./arrival";
import type { Repeated } from "./resolveRepeats";

/** A line, and those that say the same, while they are gathered. */
export type Gathered<T extends RecordRows> = {
  -readonly [Part in keyof Arrival<T>]: Arrival<T>[Part];
} & { readonly lines: number[] };

/** The lines of one row, by what they read first, so that few must be compared. */
type OfRow<T extends RecordRows> = Map<CellValue | undefined, Gathered<T>[]>;

/** Gathers lines by the row that they belong to. Those that say the same are kept once, as the latest of them. */
export const rowGroups = <T extends RecordRows>() => {
  const groups = new Map<T, Map<number, OfRow<T>>>();
  return {
    /** Adds a line, and gives what it is kept as. */
    add(arrival: Arrival<T>): Gathered<T> {
      const rows = orMade(groups, arrival.table, () => new Map<number, OfRow<T>>());
      const ofRow = orMade(rows, arrival.row, (): OfRow<T> => new Map());
      const alike = orMade(ofRow, readingOf(arrival), (): Gathered<T>[] => []);
      for (const gathered of alike)
        if (saysTheSame(gathered, arrival)) {
          gathered.lines.push(arrival.line);
          return (arrival.when ?? 0) > (gathered.when ?? 0)
            ? Object.assign(gathered, arrival)
            : gathered;
        }
      const first = { ...arrival, lines: [arrival.line] };
      alike.push(first);
      return first;
    },
    all: (): readonly (readonly Repeated<T>[])[] =>
      [...groups.values()].flatMap((rows) =>
        [...rows.values()].map((ofRow) => [...ofRow.values()].flat()),
      ),
  };
};

const orMade = <K, V>(map: Map<K, V>, key: K, make: () => V): V => {
  const known = map.get(key);
  if (known !== undefined) return known;
  const made = make();
  map.set(key, made);
  return made;
};

const readingOf = ({ table, cells }: Arrival<RecordRows>): CellValue | undefined => {
  const { columns } = table.kind;
  for (const [id, value] of cells)
    if (columns.some((column) => column.id === id && column.need === "reading")) return value;
  return undefined;
};

/** Whether two lines say the same; where both tell day and time, they may be of different times. */
const saysTheSame = (one: Arrival<RecordRows>, other: Arrival<RecordRows>): boolean => {
  const timed = one.when !== undefined && other.when !== undefined;
  if (one.retest !== other.retest) return false;
  if (one.cells.length !== other.cells.length || (!timed && one.when !== other.when)) return false;
  if (one.cells === other.cells) return true;
  for (let index = 0; index < other.cells.length; index++) {
    const [mine, theirs] = [one.cells[index], other.cells[index]];
    if (mine === theirs) continue;
    if (mine?.[0] !== theirs?.[0]) return false;
    if (mine?.[1] !== theirs?.[1] && !(timed && mine?.[0] === "date")) return false;
  }
  return true;
};
