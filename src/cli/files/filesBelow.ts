import { readdirSync, realpathSync, statSync } from "node:fs";
import { join } from "node:path";

/**
 * The files in a folder and in those below it, by name. A link to a folder is followed, but no folder is
 * entered twice, so that a loop of links ends. A folder below that cannot be looked through stands for
 * itself, so that whoever reads it says why.
 */
export function filesBelow(folder: string, entered = new Set<string>()): string[] {
  const place = realpathSync(folder);
  if (entered.has(place)) return [];
  entered.add(place);
  return readdirSync(folder)
    .sort()
    .flatMap((name) => {
      const below = join(folder, name);
      if (!statSync(below, { throwIfNoEntry: false })?.isDirectory()) return [below];
      try {
        return filesBelow(below, entered);
      } catch {
        return [below];
      }
    });
}
