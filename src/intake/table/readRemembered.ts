import { answer, type Result } from "../../quantities/result";
import type { ExportMapping } from "../../sheets/exportMapping";
import { fingerprintOf, mappingFor, optionsOf } from "./exportMappings";
import { type ExportOptions, type ExportTable, readExport } from "./readExport";

/** An export as it was read, and the mapping that was remembered for files of its shape. */
export interface Known {
  readonly table: ExportTable;
  readonly mapping?: ExportMapping;
}

/**
 * Reads an export as it is said to be; what is not said, as a remembered mapping for files with the same
 * titles has it. Where the file cannot be read at first, each mapping is tried: it may say how.
 */
export function readKnown(
  text: string,
  options: ExportOptions,
  mappings: readonly ExportMapping[],
): Result<Known> {
  const fresh = readExport(text, options);
  const candidates: readonly (ExportMapping | undefined)[] = fresh.ok
    ? [mappingFor(mappings, fingerprintOf(fresh.value))]
    : mappings;
  for (const mapping of candidates) {
    if (!mapping) continue;
    const again = readExport(text, optionsOf(mapping, options));
    if (again.ok && mappingFor([mapping], fingerprintOf(again.value)))
      return answer({ table: again.value, mapping });
  }
  return fresh.ok ? answer({ table: fresh.value }) : fresh;
}
