import type { Context, JudgedTable } from "../check/context";
import { type CellValue, isBlank } from "../records/kind";
import { cellAddress } from "../sheets/address";
import { isSameStored } from "../sheets/cell";
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

function changedCells({ rows }: Content, { tables }: Context): Changed[] {
  const handed = new Map<string, CellNow>(
    rows.flatMap(({ sheet, row, cells }) =>
      cells.map((cell) => {
        const place = `${sheet}!${cell.address}`;
        return [place, { place, what: `${row}, "${cell.column}"`, value: cell.value }] as const;
      }),
    ),
  );
  const now = new Map(tables.flatMap(cellsNow).map((cell) => [cell.place, cell]));
  return [...new Set([...now.keys(), ...handed.keys()])].flatMap((place) => {
    const [was, is] = [handed.get(place), now.get(place)];
    const [before, after] = [was?.value ?? null, is?.value ?? null];
    return isSameStored(before, after)
      ? []
      : [{ place, what: (is ?? was)?.what ?? "", was: plain(before), is: plain(after) }];
  });
}

interface CellNow {
  readonly place: string;
  readonly what: string;
  readonly value: CellValue;
}

/** The cells of a table's records as they stand in the workbook. */
const cellsNow = ({ kind, table, at, rows, keys, aside }: JudgedTable): CellNow[] =>
  rows.flatMap((row, index) =>
    aside.has(index)
      ? []
      : kind.columns.flatMap(({ id, header }): CellNow[] => {
          const column = at.get(id);
          return column === undefined
            ? []
            : [
                {
                  place: `${table.sheet}!${cellAddress(table, index, column)}`,
                  what: `${keys[index] ?? ""}, "${header}"`,
                  value: row[id] ?? null,
                },
              ];
        }),
  );

const plain = (value: CellValue): string => (isBlank(value) ? "" : String(value));
