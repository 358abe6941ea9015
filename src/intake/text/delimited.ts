import { parseCsv } from "hucre/csv";

/** One row of delimited text. `line` counts the file's lines from 1; a quoted cell can span several. */
export interface TextRow {
  readonly line: number;
  readonly cells: readonly string[];
  /** The whole row as it is written, where it is a line of a file: a line may be said again word for word. */
  readonly text?: string;
  /** Where in the text a cell begins and ends; at its end for a cell that it does not have. */
  readonly span?: (cell: number) => readonly [from: number, to: number];
  /** Set where a quotation mark opens a cell and none closes it, so that the line cannot be parted. */
  readonly unclosed?: true;
  /** By cell, what is written in the cell above that it is joined to. */
  readonly joined?: ReadonlyMap<number, string>;
}

/** A line that is parted into its cells when they are first asked for. */
class Line implements TextRow {
  #cells: readonly string[] | undefined;
  constructor(
    readonly line: number,
    readonly text: string,
    readonly delimiter: number,
  ) {}
  get cells(): readonly string[] {
    this.#cells ??= cellsOf(this.text, this.delimiter);
    return this.#cells;
  }
  span(cell: number): readonly [from: number, to: number] {
    const { text, delimiter } = this;
    const mark = String.fromCharCode(delimiter);
    let from = 0;
    for (let at = 0; at < cell; at++) {
      const next = text.indexOf(mark, from);
      if (next < 0) return [text.length, text.length];
      from = next + 1;
    }
    const to = text.indexOf(mark, from);
    return [from, to < 0 ? text.length : to];
  }
}

/** A quotation mark that has not closed within so many characters is a mark like any other. */
const LONGEST_QUOTED = 20_000;

/**
 * The rows of delimited text, one by one, each cell without the space around it. Lines without
 * quotation marks are parted here, when their cells are asked for; the others are left to the library.
 *
 * @example [...delimited('a;"b;c"\n', ";")] // [{ line: 1, cells: ["a", "b;c"] }]
 */
export function* delimited(text: string, delimiter: string): Generator<TextRow> {
  const mark = text.includes("\n") ? "\n" : "\r";
  const part = delimiter.charCodeAt(0);
  let line = 1;
  let from = text.startsWith("\ufeff") ? 1 : 0;
  while (from < text.length) {
    const end = endOf(text, from, mark);
    const record = text.slice(from, end);
    if (!record.includes('"')) {
      yield new Line(line, record, part);
      line += 1;
      from = end + 1;
      continue;
    }
    const far = closing(text, from, end, mark);
    const close = far > end && isTorn(text.slice(from, far), delimiter) ? end : far;
    const whole = text.slice(from, close);
    const unclosed = isTorn(record, delimiter) && close === end ? { unclosed: true as const } : {};
    let row = line;
    for (const cells of parseCsv(whole.replace(/\r$/, ""), { delimiter })) {
      yield { line: row, cells: cells.map((cell) => String(cell ?? "").trim()), ...unclosed };
      row += 1;
    }
    line += linesIn(whole, mark);
    from = close + 1;
  }
}

const endOf = (text: string, from: number, mark: string) => {
  const end = text.indexOf(mark, from);
  return end < 0 ? text.length : end;
};

const cellsOf = (record: string, delimiter: number): string[] => {
  const cells: string[] = [];
  let from = 0;
  for (let at = 0; at < record.length; at++)
    if (record.charCodeAt(at) === delimiter) {
      cells.push(trimmed(record, from, at));
      from = at + 1;
    }
  cells.push(trimmed(record, from, record.length));
  return cells;
};

/** A part of the text without the space around it; most cells have none. */
const trimmed = (text: string, from: number, to: number): string => {
  const part = text.slice(from, to);
  return part !== "" && (mayBeSpace(text.charCodeAt(from)) || mayBeSpace(text.charCodeAt(to - 1)))
    ? part.trim()
    : part;
};

const mayBeSpace = (sign: number) => sign <= 0x20 || sign > 0x7e;

/** Where the record ends whose first line is given: on the line where its quotation marks are even. */
const closing = (text: string, from: number, end: number, mark: string): number => {
  let quotes = 0;
  let counted = from;
  let last = end;
  for (;;) {
    for (let at = text.indexOf('"', counted); at >= 0 && at < last; at = text.indexOf('"', at + 1))
      quotes += 1;
    if (quotes % 2 === 0) return last;
    if (last >= text.length || last - from > LONGEST_QUOTED) return end;
    counted = last + 1;
    last = endOf(text, counted, mark);
  }
};

/** Whether a quotation mark opens a cell of a record and no other closes it, before a delimiter or the end of a line. */
const isTorn = (record: string, delimiter: string): boolean => {
  for (let at = 0; at < record.length; ) {
    while (record[at] === " ") at += 1;
    if (record[at] === '"') {
      at = closingQuote(record, at + 1);
      if (at < 0) return true;
      if (record.includes("\n") && !isEnd(record, at + 1, delimiter)) return true;
    }
    const next = record.indexOf(delimiter, at);
    if (next < 0) return false;
    at = next + 1;
  }
  return false;
};

/** Where the next quotation mark stands that is not one of two. */
const closingQuote = (record: string, from: number): number => {
  let at = record.indexOf('"', from);
  while (at >= 0 && record[at + 1] === '"') at = record.indexOf('"', at + 2);
  return at;
};

const isEnd = (record: string, from: number, delimiter: string): boolean => {
  let at = from;
  while (record[at] === " ") at += 1;
  const next = record[at];
  return next === undefined || next === delimiter || next === "\n" || next === "\r";
};

const linesIn = (text: string, mark: string): number => {
  let count = 1;
  for (let at = text.indexOf(mark); at >= 0; at = text.indexOf(mark, at + 1)) count += 1;
  return count;
};
