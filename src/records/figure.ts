import type { CellValue } from "./kind";

/** A number as it is written in a working: at most six significant digits. Text stands as it is. */
export const figure = (value: CellValue | undefined): string =>
  typeof value === "number" ? String(Number(value.toPrecision(6))) : String(value ?? "");
