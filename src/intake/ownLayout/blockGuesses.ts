import type { Repeated } from "../place/resolveRepeats";
import type { RecordRows } from "../rows/recordRows";
import type { ExportTable } from "../table/exportTable";
import type { InspectedBlock } from "../table/inspection";

/** The record kind that most lines of a block belong to. */
export interface BlockGuess {
  readonly kind: string;
  readonly block: InspectedBlock;
  readonly lines: number;
  readonly last: number | undefined;
  readonly facts: Record<string, string>;
}

/** For each block the kind that most of its lines belong to; none for one of which no line finds a row. */
export const blockGuesses = (
  table: ExportTable,
  found: readonly Repeated<RecordRows>[],
): BlockGuess[] => {
  const { blocks } = table.inspection;
  return blocks.flatMap((block, index): BlockGuess[] => {
    const next = blocks[index + 1];
    const last = next && next.titles.value - 1;
    const [best] = linesByKind(found, block.titles.value, last ?? Number.POSITIVE_INFINITY);
    if (!best) return [];
    const [kind, lines] = best;
    return [
      {
        kind,
        // Headings between lines part a block that has its titles once.
        block: { ...block, lines: linesUnder(block.titles.value, blocks) },
        lines: lines.size,
        last,
        facts: Object.fromEntries(
          Object.entries(table.blocks[index]?.header ?? {}).filter(([, value]) => value !== ""),
        ),
      },
    ];
  });
};

/** The lines between two that find a row, by record kind; the kind with the most first. */
const linesByKind = (
  found: readonly Repeated<RecordRows>[],
  above: number,
  last: number,
): [kind: string, lines: Set<number>][] => {
  const byKind = new Map<string, Set<number>>();
  for (const { lines, table } of found)
    for (const line of lines) {
      if (line <= above || line > last) continue;
      const { id } = table.kind;
      byKind.set(id, (byKind.get(id) ?? new Set()).add(line));
    }
  return [...byKind].sort(([, one], [, other]) => other.size - one.size);
};

const linesUnder = (titles: number, blocks: readonly InspectedBlock[]): number =>
  blocks.reduce((sum, block) => sum + (block.titles.value === titles ? block.lines : 0), 0);
