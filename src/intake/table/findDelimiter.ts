import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { quoted } from "../../quantities/quoted";
import { delimited, type TextRow } from "../text/delimited";
import { fixedWidth, WIDE_GAPS } from "../text/fixedWidth";
import { asAnswered, type Evidence } from "./evidence";
import type { ExportOptions } from "./exportOptions";
import { firstHead, type LayoutOptions, LOOK_ROWS, MAX_COLUMNS } from "./head";

export const DELIMITERS = [",", ";", "\t", "|"] as const;
/** The first titles stand within this many characters. */
const LOOK_CHARACTERS = 100_000;

/** The rows of a text, its lines parted by a mark or at wide gaps. */
export const partedBy = (text: string, mark: string): Iterable<TextRow> =>
  mark === WIDE_GAPS ? fixedWidth(text) : delimited(text, mark);

/** The first of the items, at most so many. */
export const take = <T>(items: Iterable<T>, most: number): T[] => {
  const taken: T[] = [];
  for (const item of items) {
    taken.push(item);
    if (taken.length >= most) break;
  }
  return taken;
};

/** The delimiter by which the most titles are recognised. */
export const findDelimiter = (
  whole: string,
  { delimiter }: ExportOptions,
  how: LayoutOptions,
): Evidence<string> => {
  if (delimiter !== undefined) return asAnswered(delimiter, nameOfDelimiter(delimiter));
  const text = whole.slice(0, LOOK_CHARACTERS);
  const scores = [...DELIMITERS, WIDE_GAPS]
    .map((mark) => {
      const rows = take(partedBy(text, mark), LOOK_ROWS);
      const columns = Math.max(0, ...rows.map(({ cells }) => cells.length));
      const recognised =
        columns < 2 || columns > MAX_COLUMNS ? 0 : (firstHead(rows, how)?.recognised ?? 0);
      return { mark, recognised, columns };
    })
    .sort((one, other) => other.recognised - one.recognised || other.columns - one.columns);
  const [best, next] = scores;
  const mark = best?.mark ?? ",";
  return {
    value: mark,
    evidence: (text) =>
      text.intake.seen.byTitles(nameOfDelimiter(mark)(text), best?.recognised ?? 0),
    confidence: (next?.recognised ?? 0) < 2 ? "certain" : "likely",
  };
};

const nameOfDelimiter =
  (mark: string): Said<Told> =>
  ({ intake: { seen } }) => {
    if (mark === WIDE_GAPS) return seen.delimiters.gaps;
    const named = DELIMITERS.find((one) => one === mark);
    return named === undefined ? quoted(mark) : seen.delimiters[named];
  };
