import type { Lineup } from "../lineup/lineup";
import { readLineup } from "../lineup/readLineup";

/** Namespace of our custom XML part, by which it is found again in any workbook. */
export const NAMESPACE = "urn:gearproof:memory:1";

/** What a workbook remembers for us, beyond its cells. */
export interface Memory {
  readonly lineup: Lineup;
}

/** The custom XML part that holds a memory. */
export const memoryXml = ({ lineup }: Memory): string =>
  `<?xml version="1.0" encoding="UTF-8" standalone="yes"?>\n<gearproof xmlns="${NAMESPACE}">${escaped(JSON.stringify(lineup))}</gearproof>`;

/** The memory that a custom XML part holds; undefined where it is not ours or cannot be understood. */
export function readMemoryXml(xml: string): Memory | undefined {
  if (!xml.includes(NAMESPACE)) return undefined;
  const json = /<gearproof [^>]*>([\s\S]*)<\/gearproof>/.exec(xml)?.[1];
  const lineup = json === undefined ? undefined : readLineup(unescaped(json));
  return lineup?.ok ? { lineup: lineup.value } : undefined;
}

export const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");

export const unescaped = (text: string): string =>
  text
    .replaceAll("&lt;", "<")
    .replaceAll("&gt;", ">")
    .replaceAll("&quot;", '"')
    .replaceAll("&apos;", "'")
    .replaceAll("&amp;", "&");
