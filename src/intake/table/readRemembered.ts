import type { Told } from "../../messages/told";
import { answer, type Result } from "../../quantities/result";
import type { ExportMapping } from "../../sheets/kept/exportMapping";
import { fingerprintOf, mappingFor, optionsOf } from "./exportMappings";
import type { ExportOptions } from "./exportOptions";
import type { ExportTable } from "./exportTable";
import { readExport } from "./readExport";

/** An export as it was read, and the mapping that was remembered for files with its titles. */
export interface ReadExport {
  readonly table: ExportTable;
  readonly mapping?: ExportMapping;
}

/**
 * Reads an export as the user has answered; what is not answered, as a remembered mapping for files with
 * the same titles has it. Where the file cannot be read at first, each mapping is tried: it may say how.
 */
export function readRemembered(
  text: string,
  options: ExportOptions,
  mappings: readonly ExportMapping[],
): Result<ReadExport, Told> {
  const fresh = readExport(text, options);
  const candidates: readonly (ExportMapping | undefined)[] = fresh.ok
    ? [mappingFor(mappings, fingerprintOf(fresh.value))]
    : mappings;
  for (const mapping of candidates) {
    if (!mapping) continue;
    const mapped = readExport(text, optionsOf(mapping, options));
    if (mapped.ok && mappingFor([mapping], fingerprintOf(mapped.value)))
      return answer({ table: mapped.value, mapping });
  }
  return fresh.ok ? answer({ table: fresh.value }) : fresh;
}
