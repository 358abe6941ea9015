import type { TextRow } from "../text/delimited";
import { plainWords } from "../words/plainWords";
import type { ExportColumn } from "../words/titles";

/**
 * Columns of which the first whose every text is an Id or serial number of the lineup's instruments is the
 * instrument, whatever its title; beside a column that is titled so, its serial number.
 *
 * @param rows the block's lines of readings
 * @param instruments Ids and serial numbers in lower case
 * @param given what the user has said of titles in plain words, which stands
 */
export const asInstrument = (
  columns: readonly ExportColumn[],
  rows: readonly TextRow[],
  instruments: ReadonlySet<string>,
  given: ReadonlyMap<string, string>,
): readonly ExportColumn[] => {
  const fields = new Set(columns.map(({ field }) => field));
  const field = ["instrument", "serial"].find((name) => !fields.has(name));
  const naming = columns.find(({ index, title, says, field: own }) => {
    if (says || own === "instrument" || own === "serial" || given.has(plainWords(title)))
      return false;
    const texts = rows.flatMap(({ cells }) => cells[index]?.trim().toLowerCase() || []);
    return texts.length > 0 && texts.every((text) => instruments.has(text));
  });
  return naming && field
    ? columns.map((column) => (column === naming ? { ...column, field, listed: true } : column))
    : columns;
};
