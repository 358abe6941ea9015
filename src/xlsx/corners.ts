import { parseCellRef } from "hucre/xlsx";
import type { Area } from "../sheets/area";

export function corners(range: string): Area {
  const [first = "A1", second = first] = range.split(":");
  const start = parseCellRef(first);
  const end = parseCellRef(second);
  return { top: start.row, left: start.col, bottom: end.row, right: end.col };
}
