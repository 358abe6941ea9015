import type { Context, JudgedTable } from "../check/context";
import { type CellValue, isBlank } from "../records/kind";
import { cellAddress } from "../sheets/cells/address";
import { isSameStored } from "../sheets/cells/cell";
import type { Content } from "./content";

/** One thing that is no longer as it was handed over. */
export interface Changed {
  /** A cell as `Sheet!A1`, or a fact of the lineup as `criteria.0.value`. */
  readonly place: string;
  readonly what: string;
  readonly was: string;
  readonly is: string;
}

/** What a workbook holds now against what was handed over, to the cell and the fact of its lineup. */
export const changedSince = (content: Content, context: Context): Changed[] => [
  ...changedFacts(content.lineup, context.lineup),
  ...changedCells(content, context),
];

/** Facts in which two things of plain data differ, each by its path. */
export function changedFacts(was: unknown, is: unknown, path: readonly string[] = []): Changed[] {
  if (isObject(was) && isObject(is))
    return [...new Set([...Object.keys(was), ...Object.keys(is)])].flatMap((key) =>
      changedFacts(was[key], is[key], [...path, key]),
    );
  const [before, now] = [said(was), said(is)];
  const place = path.join(".");
  return before === now ? [] : [{ place, what: path.at(-1) ?? "", was: before, is: now }];
}

type Facts = Readonly<Record<string, unknown>>;
const isObject = (value: unknown): value is Facts => typeof value === "object" && value !== null;
const said = (value: unknown): string => (value === undefined ? "" : JSON.stringify(value));

/** Cells of records that hold something else; a record is known by its names, wherever it stands now. */
function changedCells({ rows }: Content, { tables }: Context): Changed[] {
  const handed = byKey(rows);
  const now = byKey(tables.flatMap(rowsNow));
  return [...new Set([...now.keys(), ...handed.keys()])].flatMap((key) => {
    const [was, is] = [handed.get(key), now.get(key)];
    const [before, after] = [was?.value ?? null, is?.value ?? null];
    const found = is ?? was;
    return isSameStored(before, after) || !found
      ? []
      : [{ place: found.place, what: found.what, was: plain(before), is: plain(after) }];
  });
}

/** A record with the cells that it has. */
interface RowCells {
  readonly sheet: string;
  readonly row: string;
  readonly cells: readonly {
    readonly column: string;
    readonly address: string;
    readonly value: CellValue;
  }[];
}

/** Cells by what they are of; of records with the same names, each by which of them it is. */
function byKey(rows: readonly RowCells[]) {
  const seen = new Map<string, number>();
  return new Map(
    rows.flatMap(({ sheet, row, cells }) => {
      const name = JSON.stringify([sheet, row]);
      const times = seen.get(name) ?? 0;
      seen.set(name, times + 1);
      return cells.map(({ column, address, value }) => {
        const what = `${row}, "${column}"`;
        return [
          `${name} ${times} ${column}`,
          { place: `${sheet}!${address}`, what, value },
        ] as const;
      });
    }),
  );
}

/** A table's records as they stand in the workbook. */
const rowsNow = ({ kind, table, at, rows, keys, aside }: JudgedTable): RowCells[] =>
  rows.flatMap((row, index) =>
    aside.has(index)
      ? []
      : [
          {
            sheet: table.sheet,
            row: keys[index] ?? "",
            cells: kind.columns.flatMap(({ id, header }) => {
              const column = at.get(id);
              const address = column === undefined ? "" : cellAddress(table, index, column);
              return column === undefined
                ? []
                : [{ column: header, address, value: row[id] ?? null }];
            }),
          },
        ],
  );

const plain = (value: CellValue): string => (isBlank(value) ? "" : String(value));
