import type { SavedBy } from "../sheets/snapshot";
import type { Package } from "./package/package";
import { relationsOf } from "./package/relations";
import { childOf, readXml } from "./xml/readXml";

/** The relationship of a package to its core properties (ISO/IEC 29500-2). */
const CORE = "core-properties";

/** Who saved a workbook last, and on which day, as its properties have it; undefined where they do not tell. */
export function savedBy(pack: Package): SavedBy | undefined {
  const part = relationsOf(pack, "").find(({ type }) => type === CORE)?.part;
  if (part === undefined || !pack.has(part)) return undefined;
  try {
    const properties = readXml(pack.text(part));
    const name = childOf(properties, "lastModifiedBy")?.text.trim() ?? "";
    const day = childOf(properties, "modified")?.text.trim().slice(0, 10) ?? "";
    return name === "" ? undefined : { name, ...(/^\d{4}-\d\d-\d\d$/.test(day) ? { day } : {}) };
  } catch {
    // Properties that cannot be read are no reason not to open a workbook.
    return undefined;
  }
}
