import type { TextRow } from "./delimited";
import { isNumberish } from "./textCells";

/** A word or several of a line, and where they stand in it. */
interface Piece {
  readonly text: string;
  readonly from: number;
  readonly to: number;
}

/** Columns parted by two spaces or more; the mark stands for them among the delimiters. */
export const WIDE_GAPS = "  ";
/** No printed page has more columns. */
const MOST_COLUMNS = 60;
const PIECE = /\S+(?: \S+)*/g;
/** A line of nothing but strokes parts nothing: it underlines. */
const RULE = /^[\s\-=_+|*.]{3,}$/;

const piecesOf = (line: string): Piece[] =>
  [...line.replace(/\t/g, "    ").matchAll(PIECE)].map(({ 0: text, index }) => ({
    text,
    from: index,
    to: index + text.length,
  }));

/** Whether a line can be one of titles: several texts, none of them a number or a fact. */
const mayBeTitles = (pieces: readonly Piece[]): boolean =>
  pieces.length > 2 &&
  pieces.length <= MOST_COLUMNS &&
  pieces.every(({ text }) => !isNumberish(text) && !/^[:=]|[:=]$/.test(text));

/**
 * The rows of a text in columns of fixed width, as printed reports have them. Columns are where the titles
 * stand; each piece of a line goes to the title that it stands under, or nearest to.
 *
 * @example [...fixedWidth("Panel   L1   L2\nH01     31   32")] // ["Panel", "L1", "L2"], ["H01", "31", "32"]
 */
export function* fixedWidth(text: string): Generator<TextRow> {
  const lines = text.replace(/^\ufeff/, "").split(/\r\n|\r|\n/);
  const pieces = lines.map((line) => (RULE.test(line) ? [] : piecesOf(line)));
  let columns: readonly Piece[] = [];
  let titlesUntil = -1;
  for (let at = 0; at < lines.length; at++) {
    const own = pieces[at] ?? [];
    if (at > titlesUntil && mayBeTitles(own)) {
      titlesUntil = endOfTitles(pieces, at);
      const titles = widest(pieces.slice(at, titlesUntil + 1));
      columns = [...untitled(titles, pieces[titlesUntil + 1] ?? []), ...titles];
    }
    if (RULE.test(lines[at] ?? "") && own.length === 0 && (lines[at] ?? "").trim() !== "") continue;
    yield { line: at + 1, cells: cellsIn(own, columns) };
  }
}

/** The last of the lines of titles that begin at a line. */
const endOfTitles = (pieces: readonly (readonly Piece[])[], from: number): number => {
  let end = from;
  while (pieces[end + 1] !== undefined && mayBeTitles(pieces[end + 1] ?? [])) end += 1;
  return end - from > 2 ? from : end;
};

/** The names that stand before the first title, in a column without one of its own. */
const untitled = (titles: readonly Piece[], below: readonly Piece[]): readonly Piece[] => {
  const [first] = titles;
  const [name] = below;
  const isBefore =
    first !== undefined &&
    name !== undefined &&
    below.length === titles.length + 1 &&
    name.to < first.from &&
    !isNumberish(name.text);
  return isBefore ? [{ ...name, text: "" }] : [];
};

const widest = (lines: readonly (readonly Piece[])[]): readonly Piece[] =>
  lines.reduce((best, line) => (line.length > best.length ? line : best), []);

/** A line's pieces under the titles; as they come where they stand under none, such as a line of facts. */
const cellsIn = (own: readonly Piece[], columns: readonly Piece[]): string[] => {
  if (own.length > columns.length) return own.map(({ text }) => text);
  const slots = own.map((piece) => nearest(piece, columns));
  const isUnder = columns.length > 0 && new Set(slots).size === own.length && !own.some(isFact);
  if (!isUnder) return own.map(({ text }) => text);
  const cells: string[] = columns.map(() => "");
  own.forEach(({ text }, at) => {
    cells[slots[at] ?? 0] = text;
  });
  return cells;
};

const isFact = ({ text }: Piece): boolean => /:\s|:$|^:/.test(text);

/** The title that a piece overlaps most, else the one whose middle is nearest to its own. */
const nearest = (piece: Piece, columns: readonly Piece[]): number => {
  const overlaps = columns.map(
    ({ from, to }) => Math.min(to, piece.to) - Math.max(from, piece.from),
  );
  const most = Math.max(...overlaps);
  if (most > 0) return overlaps.indexOf(most);
  const middle = (one: Piece) => (one.from + one.to) / 2;
  const gaps = columns.map((column) => Math.abs(middle(column) - middle(piece)));
  return gaps.indexOf(Math.min(...gaps));
};
