import { strFromU8, strToU8 } from "fflate";
import { relationsOf } from "./inventory";

const BOOK = "xl/workbook.xml";

/**
 * Pivot tables name their cache by a number that stands in the workbook too (ECMA-376 Part 1, pivotCaches).
 * The file library numbers the caches anew; here they get the numbers back by which their tables know them.
 */
export function keepPivotCaches(parts: Record<string, Uint8Array>): void {
  const text = (name: string) => strFromU8(parts[name] ?? new Uint8Array());
  const numbers = new Map<string, number>();
  for (const part of Object.keys(parts)) {
    if (!/^xl\/pivotTables\/[^/]+\.xml$/.test(part)) continue;
    const number = /<pivotTableDefinition\b[^>]*\bcacheId="(\d+)"/.exec(text(part))?.[1];
    const cache = relationsOf(text, part).find(({ type }) => type === "pivotCacheDefinition");
    if (number && cache) numbers.set(cache.part, Number(number));
  }
  if (numbers.size === 0) return;
  const caches = new Map(relationsOf(text, BOOK).map(({ id, part }) => [id, part]));
  let free = Math.max(...numbers.values()) + 1;
  parts[BOOK] = strToU8(
    text(BOOK).replace(/<pivotCache\b[^>]*>/g, (element) => {
      const cache = caches.get(/\br:id="([^"]*)"/.exec(element)?.[1] ?? "");
      const number = numbers.get(cache ?? "") ?? free++;
      return element.replace(/\bcacheId="\d+"/, `cacheId="${number}"`);
    }),
  );
}
