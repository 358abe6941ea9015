import type { Said } from "../../messages/reasons";
import type { Told } from "../../messages/told";
import { KINDS } from "../../records/kinds";
import type { LayoutMap } from "../../sheets/kept/layoutMap";
import type { ArrivalOptions } from "../place/arrival";
import type { Confidence } from "../table/evidence";
import type { ExportTable } from "../table/exportTable";
import type { InspectedBlock } from "../table/inspection";
import { LEFT_OUT } from "../words/mappedTo";
import { type StatedField, statedField } from "../words/statedColumns";
import type { BlockGuess } from "./blockGuesses";
import type { Region } from "./sheetRows";

/** A map as it is guessed, and how sure that is: nothing is judged by it before somebody has looked. */
export interface GuessedMap {
  readonly map: LayoutMap;
  readonly confidence: Confidence;
  readonly evidence: Said<Told>;
  readonly block: InspectedBlock;
}

/**
 * The map of a block.
 *
 * @param lost by line why it finds no row
 */
export const guessedMap = (
  sheet: string,
  region: Region,
  table: ExportTable,
  guess: BlockGuess,
  lost: ReadonlyMap<number, Said<Told>>,
  means: ArrivalOptions["means"],
): GuessedMap => {
  const { kind, lines, last, facts } = guess;
  const block = withStated(guess.block, kind);
  const titles = block.titles.value;
  const share = block.lines === 0 ? 0 : Math.min(1, lines / block.lines);
  const isLikely = share >= 0.9;
  const first = isLikely ? undefined : lostIn(lost, titles, last && last + 1);
  const down = block.columns.flatMap(({ title, below }) => (below ? [title] : []));
  const { decimal, dates } = table;
  return {
    block,
    confidence: isLikely ? "likely" : "open",
    evidence: foundLines(lines, block.lines, kind, first),
    map: {
      sheet,
      kind,
      titles,
      ...(last !== undefined && { last }),
      left: region.left + 1,
      right: region.right + 1,
      titleLines: block.titleLines.value,
      units: block.units.value,
      shape: block.shape.value,
      ...(block.unit && { unit: block.unit }),
      ...(decimal.mark && { decimal: decimal.mark }),
      ...(dates && { dateOrder: dates }),
      columns: Object.fromEntries(block.columns.flatMap(mappedColumn)),
      ...(down.length > 0 && { down }),
      facts,
      ...(means && { means: means as LayoutMap["means"] }),
    },
  };
};

/** What a map says of a column; nothing of one that is not recognised, unless it was left out on purpose. */
const mappedColumn = ({
  title,
  name,
  field,
  says,
  alike,
}: InspectedBlock["columns"][number]): [name: string, field: string][] => {
  if (field.value === undefined || title === "")
    return alike === undefined && name === title && !isLeftOut(field) ? [] : [[name, LEFT_OUT]];
  const of = says && [says.position, says.stage].filter(Boolean).join(" ");
  return [[name, of === undefined ? field.value : `${field.value} of ${of}`]];
};

/** The first line of a block that finds no row, and why; the block ends before the next titles. */
export const lostIn = (
  lost: ReadonlyMap<number, Said<Told>>,
  titles: number,
  next = Number.POSITIVE_INFINITY,
): [line: number, reason: Said<Told>] | undefined =>
  [...lost].find(([line]) => line > titles && line < next);

/** How many lines find their row, and in a few words why the first of the others does not. */
const foundLines =
  (lines: number, of: number, kind: string, lost: ReturnType<typeof lostIn>): Said<Told> =>
  (text) => {
    const { found, foundBut } = text.intake.layout;
    const all = found(lines, of, kind);
    const [line, reason] = lost ?? [];
    return line === undefined || reason === undefined
      ? all
      : foundBut(all, line, String(reason(text).split(/[.;] /, 1)[0]));
  };

/** Whether the user has said that a column is left out. */
const isLeftOut = ({ value, confidence }: InspectedBlock["columns"][number]["field"]) =>
  value === undefined && confidence === "certain";

/** The block with the first limit, corrected value, spread and result of a layout's own, by title. */
const withStated = (block: InspectedBlock, id: string): InspectedBlock => {
  const { columns } = block;
  const kind = KINDS.find((one) => one.id === id);
  const stated = columns.map(({ title, field }) =>
    kind && title !== "" && field.value === undefined && !isLeftOut(field)
      ? statedField(kind, title, block.unit)
      : undefined,
  );
  const isSaid = (field: StatedField) => columns.some((column) => column.field.value === field);
  return {
    ...block,
    columns: columns.map((column, at) => {
      const field = stated[at];
      return field === undefined || stated.indexOf(field) !== at || isSaid(field)
        ? column
        : {
            ...column,
            field: {
              value: field,
              evidence: ({ intake }) => intake.seen.stated(intake.stated[field]),
              confidence: "likely",
            },
          };
    }),
  };
};
