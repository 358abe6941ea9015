import type { CellValue } from "../../records/kind";
import { type Area, areaAddress } from "../../sheets/cells/area";
import type { Told } from "../../sheets/snapshot";
import { asCell } from "../read/cellValues";
import type { Aim, Cells, Run } from "./aim";
import { OBJECT_BYTES, sentBytes } from "./chunks";

/** A cell of somebody's own layout. */
export interface LayoutAim extends Aim {
  readonly sheet: string;
  /** Sheet row and column, from 0. */
  readonly row: number;
  readonly column: number;
  /** The cells that tell what it is. */
  readonly told: readonly Told[];
}

/** What tells of a cell of a layout, from what stands in the cells that tell it. */
export const nameOfTold = (told: readonly Cells[]): string =>
  JSON.stringify(told.map((rows) => rows.map((row) => row.map((value) => asCell(value)))));

/** A run for each cell: those of a layout lie as its maker has them. */
export function layoutRuns<A extends LayoutAim>(aims: readonly A[]): Run<A>[] {
  const counted = new Set<string>();
  return aims.map((aim) => {
    const fresh = aim.told.filter(({ area }) => !counted.has(addressIn(aim, area)));
    for (const { area } of fresh) counted.add(addressIn(aim, area));
    return {
      aims: [aim],
      sheet: aim.sheet,
      table: "",
      bytes:
        (8 + 4 * fresh.length) * OBJECT_BYTES + 3 * sentBytes(fresh.map(({ values }) => values)),
      ranges: ({ workbook }, shared) => {
        const sheet = workbook.worksheets.getItem(aim.sheet);
        const named = aim.told.map(({ area }) => {
          const { top, left, bottom, right } = area;
          const address = addressIn(aim, area);
          const known =
            shared.get(address) ??
            sheet
              .getCell(top, left)
              .untrack()
              .getResizedRange(bottom - top, right - left);
          shared.set(address, known);
          return known;
        });
        return { target: sheet.getCell(aim.row, aim.column), named };
      },
      nameOf: (_index, named) => nameOfTold(named),
    };
  });
}

const addressIn = ({ sheet }: LayoutAim, area: Area): string => `${sheet}!${areaAddress(area)}`;

/** The name of a cell as it was read. */
export const nameAsTold = (told: readonly Told[]): string =>
  nameOfTold(told.map(({ values }) => values as readonly (readonly CellValue[])[]));
