import type { ExportMapping } from "../../sheets/kept/exportMapping";
import { plainWords } from "../words/plainWords";
import type { ExportOptions } from "./exportOptions";
import type { ExportTable } from "./exportTable";

/** What tells files of one shape: the titles of their first table, in plain words. */
export const fingerprintOf = ({ inspection }: ExportTable): string[] =>
  (inspection.blocks[0]?.columns ?? [])
    .map(({ title }) => plainWords(title))
    .filter((title) => title !== "");

/** The mapping that was made for files with these titles: all of them, in whatever order. */
export const mappingFor = (
  mappings: readonly ExportMapping[],
  fingerprint: readonly string[],
): ExportMapping | undefined => {
  const titles = [...fingerprint].sort().join("\n");
  return mappings.find((one) => [...one.fingerprint].sort().join("\n") === titles);
};

/** What a mapping says, as far as reading a file goes. What is said besides comes before it. */
export const optionsOf = (
  { columns, decimal, dateOrder, shape }: ExportMapping,
  said: ExportOptions,
): ExportOptions => ({
  ...said,
  mapping: { ...columns, ...said.mapping },
  decimal: said.decimal ?? decimal,
  dateOrder: said.dateOrder ?? dateOrder,
  shape: said.shape ?? shape,
});

/** A workbook's mappings with one more; one of the same name goes. */
export const withMapping = (
  mappings: readonly ExportMapping[],
  added: ExportMapping,
): ExportMapping[] => [...mappings.filter(({ name }) => name !== added.name), added];
