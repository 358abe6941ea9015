import type { TextRow } from "./delimited";

/** A line of readings, the number of its table, and the first line of that table that says the same. */
export interface IndexedLine {
  readonly row: TextRow;
  readonly table: number;
  readonly like?: number;
}

/**
 * Remembers which lines of a file are readings of which of its tables, so that the file can be read again
 * without parting it anew.
 */
export const lineIndex = () => {
  /** Runs of lines one after the other: first and last line, and their table. */
  const runs: number[] = [];
  /** For each line the first that says the same, 0 for none. */
  const likes: number[] = [];
  return {
    add(line: number, table: number, like: number | undefined): void {
      if (runs.at(-1) === table && runs.at(-2) === line - 1) runs[runs.length - 2] = line;
      else runs.push(line, line, table);
      likes.push(like ?? 0);
    },
    *linesOf(rows: Iterable<TextRow>): Generator<IndexedLine> {
      let run = 0;
      let reading = -1;
      for (const row of rows) {
        while (row.line > (runs[run + 1] ?? Number.POSITIVE_INFINITY)) run += 3;
        const table = runs[run + 2];
        if (table === undefined) return;
        if (row.line < (runs[run] ?? 0)) continue;
        reading += 1;
        yield { row, table, like: likes[reading] || undefined };
      }
    },
  };
};
