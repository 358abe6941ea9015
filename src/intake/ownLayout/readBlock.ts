import type { Told } from "../../messages/told";
import { readUnit } from "../../quantities/reading/readUnit";
import type { Result } from "../../quantities/result";
import { KINDS } from "../../records/kinds";
import type { LayoutMap } from "../../sheets/kept/layoutMap";
import type { SheetCells } from "../../sheets/snapshot";
import { inSheet } from "../table/evidence";
import type { ExportTable } from "../table/exportTable";
import { readRows } from "../table/readRows";
import { sheetRows } from "./sheetRows";

/** A map's block, read as an export is. */
export const readBlock = (map: LayoutMap, cells: SheetCells): Result<ExportTable, Told> => {
  const region = {
    top: map.titles - 1,
    bottom: (map.last ?? cells.rowCount) - 1,
    left: (map.left ?? 1) - 1,
    right: (map.right ?? cells.columnCount) - 1,
  };
  const unit = map.unit === undefined ? undefined : readUnit(map.unit);
  if (unit && !unit.ok) return unit;
  return readRows(() => sheetRows(cells, region), inSheet(), {
    name: map.sheet,
    heading: unit && { unit: unit.value, kind: KINDS.find(({ id }) => id === map.kind) },
    titles: map.titles,
    titleLines: map.titleLines,
    units: map.units,
    shape: map.shape,
    decimal: map.decimal,
    dateOrder: map.dateOrder,
    mapping: map.columns,
    down: map.down,
    blanks: true,
  });
};
