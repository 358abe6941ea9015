import type { ExportRow } from "../columns/unpivot";
import { readTitle } from "../words/readTitle";
import type { ExportBlock } from "./exportTable";
import type { Written } from "./written";

/** What the block above a table says, as far as its fields are recognised. */
export const factsOf = (header: ExportBlock["header"]): Written[] =>
  Object.entries(header).flatMap(([title, text]) => {
    const { field, unit } = readTitle(title);
    return field === undefined || text === "" ? [] : [{ field, title, text, unit }];
  });

/**
 * Makes the reader of lines: what each says, by field. What the block above the table says holds for
 * every line that does not say it itself.
 */
export const writtenBy = ({ header, columns, facts: told }: ExportBlock) => {
  const facts = (told ?? factsOf(header)).map((one): [string, Written] => [one.field, one]);
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
