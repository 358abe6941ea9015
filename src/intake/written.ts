import type { Unit } from "../quantities/units";
import type { ExportBlock, ExportRow } from "./readExport";
import { readTitle } from "./readTitle";

/** One text of an export whose field is recognised: a cell of a line, or a fact from the block above the table. */
export interface Written {
  readonly field: string;
  readonly title: string;
  readonly text: string;
  readonly unit?: Unit;
  /** Its column, where it is a cell. */
  readonly index?: number;
}

/**
 * Makes the reader of lines: what each says, by field. What the block above the table says holds for
 * every line that does not say it itself.
 */
export const writtenBy = ({ header, columns }: ExportBlock) => {
  const facts = Object.entries(header).flatMap(([title, text]): [string, Written][] => {
    const { field, unit } = readTitle(title);
    return field === undefined || text === "" ? [] : [[field, { field, title, text, unit }]];
  });
  return ({ cells }: ExportRow): ReadonlyMap<string, Written> => {
    const written = new Map(facts);
    for (const { field, title, index, unit } of columns) {
      const text = cells[index] ?? "";
      if (field !== undefined && text !== "")
        written.set(field, { field, title, text, unit, index });
    }
    return written;
  };
};
